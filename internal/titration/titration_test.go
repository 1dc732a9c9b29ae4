package titration_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
)

// gomori is a published titration: sodium phosphate buffers of 0.1 mol/l, per cent of
// the phosphate that is Na₂HPO₄ and the pH (Gomori 1955, Methods in Enzymology 1:138,
// as reprinted in laboratory tables). A hundredth more of it is 0.1 mmol of NaOH in
// 100 ml: 0.01 ml of 10 mol/l, which brings no water to speak of.
var gomori = []struct{ share, pH float64 }{
	{8, 5.8}, {12.3, 6.0}, {18.5, 6.2}, {26.5, 6.4}, {37.5, 6.6}, {49, 6.8}, {61, 7.0}, {72, 7.2}, {81, 7.4}, {87, 7.6}, {91.5, 7.8}, {94.7, 8.0},
}

// bench is a liquid of which the file says nothing but water and its titration.
const bench = `
drink: "On the Bench"
serves: 1
foods:
  stuff: {name: "Liquid of the test", per: 100 g, values: {WATER: 96.8 g, PROCNT: %g g}, source: "invented"}
  lye: {name: "Sodium hydroxide, 1 mol/kg", per: 100 g, values: {WATER: 97.7 g, NA: 2.299 g ± 0.001 g, K: 0 g ± 0 g, CLD: 0 g ± 0 g, CA: 0 g ± 0 g, MG: 0 g ± 0 g, P: 0 g ± 0 g, OA: 0 g ± 0 g}, source: "formula"}
  acid: {name: "Hydrochloric acid, 1 mol/kg", per: 100 g, values: {WATER: 96.4 g, NA: 0 g ± 0 g, K: 0 g ± 0 g, CLD: 3.545 g ± 0.001 g, CA: 0 g ± 0 g, MG: 0 g ± 0 g, P: 0 g ± 0 g, OA: 0 g ± 0 g}, source: "formula"}
components:
  stuff:
    ingredients: [100 g own:stuff]
    measured:
      titration: [%s]
      %s: 10 mol/l
      sample: 100.0 g
build: [100 g stuff, %s]
`

// titrated assays the liquid with mmol of base (negative: acid) added to 100 g. up tells
// whether it was titrated with base from the first point, or with acid from the last.
func titrated(t *testing.T, up bool, protein, mmol float64) *assay.Assay {
	t.Helper()
	var points []string
	titrant := "base"
	for i := range gomori {
		p := gomori[i]
		used := p.share - gomori[0].share
		if !up {
			titrant = "acid"
			p = gomori[len(gomori)-1-i]
			used = gomori[len(gomori)-1].share - p.share
		}
		points = append(points, fmt.Sprintf("[%.3f ml, %.1f]", used/100, p.pH))
	}
	added := "0.0001 g own:lye"
	if mmol > 0 {
		added = fmt.Sprintf("%.4f g own:lye", mmol)
	} else if mmol < 0 {
		added = fmt.Sprintf("%.4f g own:acid", -mmol)
	}
	return assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(bench, protein, strings.Join(points, ", "), titrant, added), 200)
}

// notesOf gives the texts of the notes of a kind.
func notesOf(a *assay.Assay, kind string) (texts []string) {
	for _, n := range a.Notes {
		if n.Kind == kind {
			texts = append(texts, n.Text)
		}
	}
	return texts
}

func TestTitratedComponentReproducesItsCurve(t *testing.T) {
	for _, up := range []bool{true, false} {
		for _, p := range gomori {
			mmol := (p.share - gomori[0].share) / 10
			if !up {
				mmol = (p.share - gomori[len(gomori)-1].share) / 10
			}
			pH := titrated(t, up, 0, mmol).Chemistry.PHMeter
			require.Empty(t, pH.Why)
			assert.InDelta(t, p.pH, pH.Mean, 0.05, "with base %v, %g mmol", up, mmol)
			assert.Less(t, pH.High-pH.Low, 0.2, "as sure as its meter and its titrant")
		}
	}
}

// Protein keeps a composition from having a pH, and a titration knows it.
func TestProteinOfWhatWasTitratedDoesNotMatter(t *testing.T) {
	a := titrated(t, true, 3.2, 5)
	assert.Empty(t, a.Chemistry.PHMeter.Why)
	assert.InDelta(t, titrated(t, true, 0, 5).Chemistry.PHMeter.Mean, a.Chemistry.PHMeter.Mean, 0.01)
}

// Beyond what was titrated nothing is printed as known, and what is known of it is.
func TestTitrationSaysNothingBeyondItself(t *testing.T) {
	sour := titrated(t, true, 0, -30).Chemistry
	assert.Contains(t, sour.PHMeter.Why, "more acid than stuff was titrated (down to pH 5.80)")
	assert.Equal(t, 5.8, sour.PHMeter.High, "but it is below that")
	assert.True(t, sour.PHMeter.Unknown)

	base := titrated(t, true, 0, 20).Chemistry
	assert.Contains(t, base.PHMeter.Why, "less acid than stuff was titrated (up to pH 8.00)")
	assert.Equal(t, 8.0, base.PHMeter.Low)
	assert.Empty(t, titrated(t, true, 0, 1).Chemistry.Acidity[0].Per100g.Why, "8.1 is within what 8.0 tells")
	assert.Contains(t, titrated(t, false, 0, -1).Chemistry.StrongIons.Why, "titration")
}

// A tenth more sample is a tenth less buffer in each gram.
func TestSampleOfATitrationCounts(t *testing.T) {
	text := func(sample string) string {
		return "drink: x\nserves: 1\ncomponents:\n  juice:\n    ingredients: [100 g core:orange-juice]\n" +
			"    measured: {titration: [[0 ml, 3.6], [4 ml, 4.3], [8 ml, 5.2], [11 ml, 6.5], [12 ml, 8.2]], base: 0.1 mol/l, sample: " + sample + "}\nbuild: [100 g juice]\n"
	}
	lib := assaytest.Core(t)
	first := assaytest.Assay(t, lib, text("10.0 g"), 200).Chemistry.Acidity[0].Per100g.Mean
	// 12 ml of 0.1 mol/l for 10 g: 1.2 mmol, as citric acid 0.0768 g: 0.77 g in 100 g.
	assert.InDelta(t, 0.768, first, 0.02)
	assert.InEpsilon(t, first/1.1, assaytest.Assay(t, lib, text("11.0 g"), 200).Chemistry.Acidity[0].Per100g.Mean, 0.01)
	// By volume: orange juice weighs 1.04 to 1.05 g/ml (Belitz, table 18.41: 1.046).
	assert.InEpsilon(t, first/1.046, assaytest.Assay(t, lib, text("10.0 ml"), 200).Chemistry.Acidity[0].Per100g.Mean, 0.01)
}

// A titration may leave its sample out: then it is the usual one, and that is said. One
// that was taken of 25 g all the same needs 2.5 times the base, and the recipe knows it.
func TestSampleOfATitrationMayBeLeftOut(t *testing.T) {
	const text = "drink: x\nserves: 1\ncomponents:\n  juice:\n    ingredients: [100 g core:%s]\n" +
		"    measured: {titration: [[0 ml, 3.6], [%g ml, 4.3], [%g ml, 5.2], [%g ml, 6.5], [%g ml, 8.2]], base: 0.1 mol/l%s}\nbuild: [100 g juice]\n"
	lib := assaytest.Core(t)
	with := func(food, sample string, grams float64) *assay.Assay {
		return assaytest.Assay(t, lib, fmt.Sprintf(text, food, 0.4*grams, 0.8*grams, 1.1*grams, 1.2*grams, sample), 200)
	}
	left, written := with("orange-juice", "", 10), with("orange-juice", ", sample: 10.0 g", 10)
	require.Len(t, notesOf(left, "titration"), 1)
	assert.Contains(t, notesOf(left, "titration")[0], "10 g are taken")
	assert.Empty(t, notesOf(written, "titration"))
	assert.InDelta(t, written.Chemistry.Acidity[0].Per100g.Mean, left.Chemistry.Acidity[0].Per100g.Mean, 1e-4)
	assert.Empty(t, notesOf(left, "reading disagrees"))

	wrong := with("orange-juice", "", 25)
	require.Len(t, notesOf(wrong, "reading disagrees"), 1)
	assert.Contains(t, notesOf(wrong, "reading disagrees")[0], "check the sample")
	assert.Empty(t, notesOf(with("orange-juice", ", sample: 25.0 g", 25), "reading disagrees"))
	espresso := notesOf(with("espresso", "", 25), "reading disagrees")
	require.Len(t, espresso, 1, "of whose base the composition tells too little to disagree")
	assert.Contains(t, espresso[0], "the curve begins at pH 3.60, and its recipe makes 5.5")
}

// A titration with base and one with acid of one state are two ends of one curve.
func TestTwoTitrationsAreOneCurve(t *testing.T) {
	const text = `
drink: x
serves: 1
foods:
  stuff: {name: "Liquid of the test", per: 100 g, values: {WATER: 98.8 g}, source: "invented"}
components:
  stuff:
    ingredients: [100 g own:stuff]
    steps:
      - measured: {titration: [%s], base: 10 mol/l, sample: 100.0 g}
    measured: {titration: [%s], acid: 5 mol/l, sample: 50.0 g}
build: [100 g stuff]
`
	const middle = 6 // pH 7.0
	var up, down []string
	for _, p := range gomori[middle:] {
		up = append(up, fmt.Sprintf("[%.3f ml, %.1f]", (p.share-gomori[middle].share)/100, p.pH))
	}
	for i := middle; i >= 0; i-- {
		down = append(down, fmt.Sprintf("[%.3f ml, %.1f]", (gomori[middle].share-gomori[i].share)/100, gomori[i].pH))
	}
	c := assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(text, strings.Join(up, ", "), strings.Join(down, ", ")), 200).Chemistry
	assert.InDelta(t, 7.0, c.PHMeter.Mean, 0.05)
	first, last := c.Curve[0], c.Curve[len(c.Curve)-1]
	assert.InDelta(t, 5.8, first.PH, 0.05, "down to where the acid went")
	assert.InDelta(t, 8.1, last.PH, 0.05, "and up to the end point")
	assert.InEpsilon(t, (gomori[0].share-gomori[middle].share)/10, first.Base, 0.03, "mmol in 100 g")
	for i := 1; i < len(c.Curve); i++ {
		assert.Greater(t, c.Curve[i].Base, c.Curve[i-1].Base)
	}
}

// Carrot juice reads about pH 6.4 (data/core/literature.csv). A curve that begins at 4.1 is another
// liquid, or a meter that is off: neither frees the pot from control of time and temperature, of which
// a pH of 4.2 at most would (FDA Food Code 2022, 1-201.10, table B). One of lemon juice does.
func TestADoubtedCurveFreesNothing(t *testing.T) {
	const text = "drink: x\nserves: 1\ncomponents:\n  pot:\n    ingredients: [100 g core:%s]\n    keeps: 4 days at 4 °C\n" +
		"    measured: {titration: [[0 ml, %g], [0.5 ml, 4.9], [1 ml, 5.4]], base: %s mol/l, sample: 10 g}\nbuild: [50 g pot]\n"
	lib := assaytest.Core(t)
	held := func(of string, begins float64, base string) *chemistry.Holding {
		return assaytest.Assay(t, lib, fmt.Sprintf(text, of, begins, base), 200).Components[0].Chemistry.Keeping.Holding
	}
	carrot := held("carrot-juice", 4.1, "0.1")
	assert.True(t, carrot.Doubted)
	assert.True(t, carrot.NeedsAssessment)
	assert.True(t, math.IsNaN(carrot.PH))
	lemon := held("lemon-juice", 2.4, "6")
	assert.False(t, lemon.Doubted)
	assert.False(t, lemon.NeedsAssessment)
}
