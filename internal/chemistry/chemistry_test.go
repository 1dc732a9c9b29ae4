package chemistry_test

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/food"
)

// Every core fruit, juice, vegetable and coffee with a published pH in
// testdata/published_ph.csv: where a pH is given its 90 % interval should meet the
// published range; where it is withheld, it says why. The published pH that the foods carry
// are taken away first, and what rests on the range of a group does not count: they would
// prove nothing.
func TestPHOfCoreFoodsAgainstPublishedPH(t *testing.T) {
	file, err := os.Open("testdata/published_ph.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	lib := assaytest.WithoutPH(assaytest.Core(t))
	var given, met int
	var misses, halves []float64
	for _, row := range rows[1:] {
		require.Contains(t, lib, food.ID{Table: "core", Code: row[0]})
		low, errLow := strconv.ParseFloat(row[1], 64)
		high, errHigh := strconv.ParseFloat(row[2], 64)
		require.NoError(t, errLow)
		require.NoError(t, errHigh)
		c := assaytest.Glass(t, lib, "core:"+row[0], 25)
		pH := c.PHMeter
		if pH.Why != "" {
			assert.True(t, math.IsNaN(pH.Mean), row[0])
			t.Logf("%-28s published %.2f–%.2f, withheld (%.2f–%.2f): %s", row[0], low, high, pH.Low, pH.High, pH.Why)
			continue
		}
		if slices.ContainsFunc(c.RestsOn, func(r acidity.Calibration) bool { return r.Group == "" || r.Moved }) {
			t.Logf("%-28s published %.2f–%.2f, given %.2f (%.2f–%.2f) as published", row[0], low, high, pH.Mean, pH.Low, pH.High)
			continue
		}
		given++
		miss := max(low-pH.Mean, pH.Mean-high, 0)
		misses, halves = append(misses, miss), append(halves, (pH.High-pH.Low)/2)
		word := "missed"
		const digit = 0.005 // half of the last digit in which a pH is published
		if pH.Low <= high+digit && pH.High >= low-digit {
			met, word = met+1, "met"
		}
		t.Logf("%-28s published %.2f–%.2f, given %.2f (%.2f–%.2f): %s", row[0], low, high, pH.Mean, pH.Low, pH.High, word)
	}
	slices.Sort(misses)
	slices.Sort(halves)
	t.Logf("%d given, %d meet the published range; median miss %.2f, median half-width %.2f", given, met, misses[given/2], halves[given/2])
	require.GreaterOrEqual(t, given, 25)
	assert.GreaterOrEqual(t, float64(met)/float64(given), 0.9)
	assert.LessOrEqual(t, misses[given/2], 0.2)
	assert.LessOrEqual(t, halves[given/2], 0.3)
}

// A redcurrant's acids are printed as they are whatever has been titrated of it.
func TestTitratedAcidityFillsNoAcid(t *testing.T) {
	lib := assaytest.Core(t)
	redcurrant := lib[food.ID{Table: "core", Code: "redcurrant"}]
	acids, ok := redcurrant.Value("OA")
	require.True(t, ok)
	figure, ok := assaytest.Assay(t, lib, "drink: x\nserves: 1\nbuild: [100 g core:redcurrant]\n", 50).PerServing.Find("OA")
	require.True(t, ok)
	assert.InEpsilon(t, acids.Amount, float64(figure.Mean), 0.02)
	assert.Greater(t, assaytest.Glass(t, lib, "core:redcurrant", 25).Acidity[0].Per100g.Mean, 0.4)
}

func TestNoPHWhereCompositionDoesNotTell(t *testing.T) {
	milk := assaytest.Glass(t, assaytest.Core(t), "core:milk-whole", 25)
	assert.Contains(t, milk.PH.Why, "protein")
	assert.Contains(t, milk.Acidity[0].Per100g.Why, "protein")
	assert.True(t, math.IsNaN(milk.PH.Mean))

	// SR28's lemon juice has no acids: no pH is given, and why.
	lemon := assaytest.Glass(t, assaytest.SR28(t), "sr:09152", 25)
	assert.Contains(t, lemon.PH.Why, "acids unknown of sr:09152")
	assert.True(t, math.IsNaN(lemon.PH.Mean))
	assert.True(t, math.IsNaN(lemon.PHMeter.Mean))
	assert.Less(t, lemon.PHMeter.Low, 2.6, "bounded by the most acid that its balance leaves")
	assert.InDelta(t, 4.34, lemon.PHMeter.High, 0.1, "and by the least sour of its group, Florida oranges (FDA 2003)")

	verjuice := assaytest.Glass(t, assaytest.Core(t), "core:verjuice", 25)
	if verjuice.PH.Why != "" { // as long as nobody states its potassium
		assert.Contains(t, verjuice.PH.Why, "potassium unknown of core:verjuice")
	}

	sugar := assaytest.Glass(t, assaytest.Core(t), "core:glucose", 25)
	assert.Contains(t, sugar.PH.Why, "no water")

	hot := assaytest.Glass(t, assaytest.Core(t), "core:lemon-juice", 75)
	assert.Contains(t, hot.PH.Why, "75 °C")
	assert.Empty(t, hot.PHMeter.Why, "the meter's pH is at 25 °C whatever the drink is served at")
}

func TestAcidityOfASolutionMadeByFormula(t *testing.T) {
	// 1 g of anhydrous citric acid in 99 g of water: titratable acidity is the
	// acid itself to within what pH 8.1 leaves (0.2 %), whatever the end point's
	// name; pH of 0.0526 mol/kg between the published 2.62 (10 mmol/l) and 2.08
	// (100 mmol/l), tables of common acids.
	text := "drink: x\nserves: 1\nat: 25 °C\nbuild: [1 g core:citric-acid, 99 g core:water-pure]\n"
	c := assaytest.Assay(t, assaytest.Core(t), text, 50).Chemistry
	require.Empty(t, c.PH.Why)
	assert.Equal(t, 8.1, c.Acidity[0].EndPoint)
	assert.InEpsilon(t, 1.0, c.Acidity[0].Per100g.Mean, 0.003)
	assert.Greater(t, c.PH.Mean, 2.08)
	assert.Less(t, c.PH.Mean, 2.62)
	assert.InDelta(t, c.PH.Mean, c.PHMeter.Mean, 1e-9)
	assert.InEpsilon(t, c.Brix.Mean/c.Acidity[0].Per100g.Mean, c.BrixAcid.Mean, 1e-9)
}

func TestGasIsTakenOutBeforeTitration(t *testing.T) {
	still := "drink: x\nserves: 1\nat: 5 °C\nbuild: [1 g core:citric-acid, 99 g core:water-pure]\n"
	fizzy := still + "finish:\n  - carbonate: {left: 4 g/l}\n"
	a, b := assaytest.Assay(t, assaytest.Core(t), still, 50).Chemistry, assaytest.Assay(t, assaytest.Core(t), fizzy, 50).Chemistry
	assert.InEpsilon(t, a.Acidity[0].Per100g.Mean, b.Acidity[0].Per100g.Mean, 0.006)
	assert.InDelta(t, a.PH.Mean, b.PH.Mean, 0.01, "in a sour drink gas does not move the pH")
	assert.InDelta(t, 4, b.CO2.Mean, 0.1)
}
