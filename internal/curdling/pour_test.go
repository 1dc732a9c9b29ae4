package curdling_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/curdling"
)

// titratedMilk is a component whose milk took 0.0225 mol of acid a kilogram and unit
// of pH, which is what milks take (see the fixture of package curdling).
const titratedMilk = `  steamed milk:
    ingredients: [140 g core:milk-whole]
    measured:
      titration: [[0 ml, 6.65], [1 ml, 6.20], [2 ml, 5.75], [3 ml, 5.35], [4 ml, 5.00], [5 ml, 4.65], [6 ml, 4.30]]
      acid: 0.1 mol/l
      sample: 10 g
`

// ferry is a warm drink of milk and a lemon syrup; components are more of the file.
func ferry(components, build string) string {
	return fmt.Sprintf(`drink: "Grey Ferry"
serves: 1
at: 55 °C
components:
  lemon syrup:
    ingredients: [60 g core:lemon-juice, 40 g core:sugar-white]
%sbuild:
%s`, components, build)
}

func TestCurdleMapStandsWhereTheChemistryDoes(t *testing.T) {
	lib := assaytest.Core(t)
	a := assaytest.Assay(t, lib, ferry(titratedMilk, "  - 6 g lemon syrup\n  - 5 g core:sugar-white\n  - 140 g steamed milk\n"), 200)
	c := a.Curdling
	require.NotNil(t, c)
	require.Empty(t, c.Why)
	assert.Equal(t, []string{"steamed milk"}, c.Milk)
	assert.Equal(t, "lemon syrup", c.Sour)
	assert.Equal(t, "casein of milk", c.Protein)
	assert.Equal(t, 55.0, c.Celsius)
	assert.InDelta(t, 140.0/151, c.Stand.MilkShare, 1e-9)
	assert.InDelta(t, a.Chemistry.PHMeter.Mean, c.PH.Mean, 1e-6, "the parts pooled are the drink")
	assert.Equal(t, curdling.Doubtful, c.Stand.Verdict)
	assert.NotEmpty(t, c.Ways)
}

// Twice the dose on the map is the drink with twice the dose: pH to 0.01, since the
// draws of the written amounts are their own.
func TestCellOfTheMapIsTheDrinkThatItSays(t *testing.T) {
	lib := assaytest.Core(t)
	of := func(syrup, milk int) *curdling.Judgement {
		return assaytest.Assay(t, lib, ferry(titratedMilk, fmt.Sprintf("  - %d g lemon syrup\n  - %d g steamed milk\n", syrup, milk)), 200).Curdling
	}
	grid := of(4, 70).Map
	const own, twice = 4, 8 // of the doses
	require.Equal(t, 2.0, grid.Doses[twice])
	require.Equal(t, 2.0, grid.Milks[6])
	assert.InDelta(t, of(8, 70).PH.Mean, grid.Cells[own][twice].PH, 0.01)
	assert.InDelta(t, of(4, 140).PH.Mean, grid.Cells[6][own].PH, 0.01)
	assert.InDelta(t, of(8, 140).PH.Mean, grid.Cells[own][own].PH, 0.01, "the same in other amounts")
}

func TestNoEstimateNamesTheReading(t *testing.T) {
	lib := assaytest.Core(t)
	for name, c := range map[string]struct{ components, build, why, do string }{
		"milk, poured directly": {"", "  - 10 g lemon syrup\n  - 140 g core:milk-whole\n", "no table says how much", "under a component made of it alone"},
		"a plant drink":         {"", "  - 10 g lemon syrup\n  - 140 g core:oat-drink\n", "no table says how much", "titrate Oat drink"},
		"nothing published":     {"", "  - 10 g lemon syrup\n  - 140 g core:rice-drink\n", "nobody has published", "flakes"},
		"titrated too little": {
			"  milk:\n    ingredients: [140 g core:milk-whole]\n    measured: {titration: [[0 ml, 6.70], [1 ml, 6.45], [2 ml, 6.20]], acid: 0.1 mol/l, sample: 10 g}\n",
			"  - 10 g lemon syrup\n  - 140 g milk\n", "ends at pH 6.2", "down to pH 4.6",
		},
		"acids that nobody states": {
			titratedMilk + "foods:\n  cordial: {name: A cordial, group: fruit juice, per: 100 g, values: {WATER: 85 g, SUGAR: 5 g, CHOCDF: 14 g, K: 100 mg}, source: made up}\n",
			"  - 40 g own:cordial\n  - 70 g steamed milk\n", "leaves the pH open", "measure the pH of A cordial",
		},
	} {
		got := assaytest.Assay(t, lib, ferry(c.components, c.build), 50).Curdling
		if assert.NotNil(t, got, name) {
			assert.Contains(t, got.Why, c.why, name)
			assert.Contains(t, got.Do, c.do, name)
			assert.Empty(t, got.Map.Cells, name)
		}
	}
}

func TestDrinksThatHaveNoCurdleMap(t *testing.T) {
	lib := assaytest.Core(t)
	curdled := "  veil:\n    ingredients: [200 g core:milk-whole, 8 g core:lemon-juice]\n    steps:\n      - curdle: {collect: 160 g, by: acid, at: 63 °C}\n"
	for name, text := range map[string]string{
		"whey":                  ferry("", "  - 10 g lemon syrup\n  - 140 g core:whey-acid\n"),
		"milk that was curdled": ferry(curdled, "  - 10 g lemon syrup\n  - 140 g veil\n"),
		"no milk":               ferry("", "  - 10 g lemon syrup\n  - 140 g core:water-tap\n"),
		"milk alone":            ferry(titratedMilk, "  - 140 g steamed milk\n"),
	} {
		assert.Nil(t, assaytest.Assay(t, lib, text, 50).Curdling, name)
	}
}

func TestDrinkWithoutATemperatureSaysSo(t *testing.T) {
	text := `drink: "Ferry"
serves: 1
build: [10 g core:lemon-juice, 100 g core:milk-whole]
`
	c := assaytest.Assay(t, assaytest.Core(t), text, 50).Curdling
	require.NotNil(t, c)
	assert.True(t, c.Assumed)
	assert.Equal(t, acidity.MeterCelsius, c.Celsius)
}

// Of proteins that curdle at different pH the one that curdles first counts, whichever is
// poured first; where nobody has published when one of them does, there is no estimate.
func TestTheProteinThatCurdlesFirst(t *testing.T) {
	lib := assaytest.Core(t)
	for build, want := range map[string]string{
		"  - 50 g core:milk-whole\n  - 50 g core:soya-drink\n  - 10 g lemon syrup\n": "soya protein",
		"  - 50 g core:soya-drink\n  - 10 g lemon syrup\n  - 50 g core:milk-whole\n": "soya protein",
		"  - 50 g core:milk-whole\n  - 10 g lemon syrup\n":                           "casein of milk",
		"  - 50 g core:milk-whole\n  - 50 g core:rice-drink\n  - 10 g lemon syrup\n": "",
		"  - 50 g core:rice-drink\n  - 50 g core:milk-whole\n  - 10 g lemon syrup\n": "",
		"  - 50 g core:oat-drink\n  - 50 g core:soya-drink\n  - 10 g lemon syrup\n":  "oat protein", // both from pH 6.3: the first poured
		"  - 50 g core:soya-drink\n  - 50 g core:oat-drink\n  - 10 g lemon syrup\n":  "soya protein",
	} {
		c := assaytest.Assay(t, lib, ferry("", build), 20).Curdling
		require.NotNil(t, c, build)
		assert.Equal(t, want, c.Protein, build)
		if want == "" {
			assert.Contains(t, c.Why, "nobody has published at which pH the protein of core:milk-whole, core:rice-drink curdles")
		}
		assert.NotContains(t, c.Milk, "lemon syrup")
	}
}

// The sour part is the one that needs the most base, not the largest; the rest dilutes.
func TestTheSourPartNeedsTheMostBase(t *testing.T) {
	lib := assaytest.Core(t)
	components := titratedMilk + strings.Replace(titratedMilk, "steamed", "more", 1) + "  strong: {ingredients: [4 g core:citric-acid, 96 g core:water-pure]}\n  weak: {ingredients: [1 g core:citric-acid, 99 g core:water-pure]}\n"
	for _, build := range []string{"  - 5 g strong\n  - 10 g weak\n  - 20 g core:water-pure\n  - 100 g steamed milk\n  - 40 g more milk\n", "  - 10 g weak\n  - 40 g more milk\n  - 20 g core:water-pure\n  - 100 g steamed milk\n  - 5 g strong\n"} {
		a := assaytest.Assay(t, lib, ferry(components, build), 50)
		c := a.Curdling
		require.NotNil(t, c)
		require.Empty(t, c.Why)
		assert.Equal(t, "strong", c.Sour)
		assert.InDelta(t, a.Chemistry.PHMeter.Mean, c.PH.Mean, 1e-6, "the parts pooled are the drink")
		assert.InDelta(t, 140.0/175, c.Stand.MilkShare, 1e-9)
		assert.False(t, c.Assumed)
	}
}

func TestWhatBuffersUnseenIsSaid(t *testing.T) {
	lib := assaytest.Core(t)
	base := "foods:\n  shake: {name: A shake, per: 100 g, values: {WATER: 60 g, PROCNT: 30 g, CITAC: 2 g, K: 100 mg}, source: made up}\n"
	for name, c := range map[string]struct{ components, build, why, do string }{
		"other protein":            {titratedMilk + base, "  - 10 g own:shake\n  - 70 g steamed milk\n", "A shake: 3.8 g of protein in 100 g of the drink buffer as its acids do", "titrate A shake"},
		"little of it":             {titratedMilk + base, "  - 1 g own:shake\n  - 140 g steamed milk\n", "", ""},
		"titrated from too low":    {"  milk:\n    ingredients: [140 g core:milk-whole]\n    measured: {titration: [[0 ml, 5.40], [2 ml, 4.90], [6 ml, 4.30]], acid: 0.1 mol/l, sample: 10 g}\n", "  - 10 g lemon syrup\n  - 140 g milk\n", "the titration of milk ends at pH 5.4, and curdling begins above", "titrate milk with base up to pH 6.0"},
		"titrated just far enough": {"  milk:\n    ingredients: [140 g core:milk-whole]\n    measured: {titration: [[0 ml, 6.00], [1 ml, 5.70], [2 ml, 5.40]], acid: 0.1 mol/l, sample: 10 g}\n", "  - 1 g lemon syrup\n  - 140 g milk\n", "", ""},
		"milk of a house's own":    {"  milk: {ingredients: [140 g core:milk-whole]}\n", "  - 10 g lemon syrup\n  - 140 g milk\n", "milk: its protein and salts buffer", "titrate milk: 10 g of it with acid of 0.1 mol/l, a little at a time, down to pH 4.6"},
	} {
		got := assaytest.Assay(t, lib, ferry(c.components, c.build), 30).Curdling
		if !assert.NotNil(t, got, name) {
			continue
		}
		if c.why == "" {
			assert.Empty(t, got.Why, name)
			continue
		}
		assert.Contains(t, got.Why, c.why, name)
		assert.Contains(t, got.Do, c.do, name)
	}
}

// A reading of the drink that is titrated to lower pH says nothing beyond it: the map calls
// nothing smooth there.
func TestNothingIsSmoothBelowWhatWasTitrated(t *testing.T) {
	lib := assaytest.Core(t)
	c := assaytest.Assay(t, lib, ferry(titratedMilk, "  - 30 g lemon syrup\n  - 140 g steamed milk\n"), 50).Curdling
	require.NotNil(t, c)
	require.Empty(t, c.Why)
	for _, row := range c.Map.Cells {
		for _, cell := range row {
			if cell.PH < 4.3 {
				assert.Equal(t, curdling.Curdles, cell.Verdict, "pH %.2f", cell.PH)
			}
		}
	}
}
