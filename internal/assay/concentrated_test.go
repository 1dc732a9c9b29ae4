package assay_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

// juiced is a drink of 100 g of a juice through some steps, and of what else is poured.
func juiced(t *testing.T, ingredients, steps, build string) *assay.Assay {
	t.Helper()
	return assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(`
drink: "Juice"
serves: 1
foods:
  press: {name: "House juice", group: fruit juice, per: 100 g, values: {WATER: 90 g}, source: "invented"}
components:
  pot:
    ingredients: [%s]
    steps: [%s]
build: [%s]
`, ingredients, steps, build), 200)
}

const cherry = "100 g ± 0.0001 g core:sour-cherry-juice"

// The sugars of concentrated juice are added as far as they are more than those of the same
// volume of single-strength juice; all water of the finished drink may bring it back, water
// that was lost may not (21 CFR 101.9(c)(6)(iii), 81 FR 33742 at 33980; FDA, questions and
// answers). 100 g of sour cherry juice are 95.5 ml with 8.6 g of sugars, 9.0 g in 100 ml.
func TestSugarsOfConcentratedJuiceAreAdded(t *testing.T) {
	const reduced = "reduce: {to: 30 g ± 0.0001 g}"
	for _, c := range []struct {
		name, ingredients, steps, build string
		want                            float64 // g
	}{
		{"reduced: 8.6 − 25.4 ml × 9.0 ÷ 100", cherry, reduced, "30 g ± 0.0001 g pot", 6.3},
		{"half of it: half", cherry, reduced, "15 g ± 0.0001 g pot", 3.15},
		{"a cordial: 8.6 − (25.4 + 35.1 ml) × 9.0 ÷ 100", cherry, reduced, "30 g ± 0.0001 g pot, 35 g ± 0.0001 g core:water-pure", 3.16},
		{"a cordial with the water that left", cherry, reduced, "30 g ± 0.0001 g pot, 70 g ± 0.0001 g core:water-pure", 0},
		{"a cordial in coffee", cherry, reduced, "30 g ± 0.0001 g pot, 80 g core:filter-coffee", 0},
		{"diluted back", cherry, reduced + ", dilute: {to: 100 g ± 0.0001 g}", "100 g ± 0.0001 g pot", 0},
		{"pure", cherry, "strain: {collect: 80 g ± 0.0001 g, through: cloth}", "80 g ± 0.0001 g pot", 0},
		{"inverted", cherry, "invert: {share: 100 %}", "100 g ± 0.0001 g pot", 0},
		{"sweeter than the table", cherry, "measured: {brix: 13}", "100 g ± 0.0001 g pot", 0},
		{"frozen out, a part of the sugars with the ice: 7.46 − 26.0 ml × 9.0 ÷ 100", cherry, "concentrate: {by: freezing, to: 30 g ± 0.0001 g}", "30 g ± 0.0001 g pot", 5.1},
		{"by a membrane", cherry, `split: {keep: {WATER: 20 %}, because: "test"}`, "30 g ± 0.0001 g pot", 6.3},
		{"boiled down, not said, and weighed: 40.1 ml × 9.0 ÷ 100", cherry, "measured: {mass: 60 g ± 0.1 g}", "60 g ± 0.0001 g pot", 3.6},
		{"boiled down, and weighed", cherry, "reduce: {to: 34 g ± 3 g}, measured: {mass: 32 g ± 0.1 g}", "32 g ± 0.0001 g pot", 6.1},
		{"with the sugar of a syrup: 6.3 + 50", cherry + ", 50 g ± 0.0001 g core:sugar-white", "reduce: {to: 80 g ± 0.0001 g, at: 0 °C, for: 1 s}", "80 g ± 0.0001 g pot", 56.3},
		{"milk boils down to no added sugar", "100 g core:milk-whole", "reduce: {to: 60 g}", "60 g pot", 0},
	} {
		a := juiced(t, c.ingredients, c.steps, c.build)
		grams, most, known := a.AmountOf(constituent.AddedSugar)
		assert.True(t, known, c.name)
		assert.InDelta(t, c.want, grams, 0.1, c.name)
		assert.InDelta(t, grams, most, 1e-9, c.name)
		f, ok := a.PerServing.Find(constituent.AddedSugar)
		if c.want > 0 {
			assert.True(t, ok, c.name)
			assert.Less(t, f.Low, f.Mean, c.name)
			assert.Less(t, f.Mean, f.High, c.name)
		}
		said := 0
		for _, n := range a.Notes {
			if n.Kind == "added sugar" {
				said++
			}
		}
		assert.Equal(t, c.want > 0, said == 1, "%s: %v", c.name, a.Notes)
	}
}

// A bought concentrate that is brought back to single strength has no added sugars, one that
// sweetens has: 21 CFR 101.9(c)(6)(iii) speaks of concentrated juice, whoever has boiled it
// down. 50 g of orange juice concentrate at 60.57 % water (SR28 09214) hold the 19.7 g of solids
// of 168.5 g of juice at 11.7 % (09206): 118.5 g of water are gone. Of the 163.5 ml that this
// would be 44.8 ml are there, 27 %; with 66 g of water 110.9 ml, 68 %.
func TestABoughtConcentrateIsAJuiceWithoutItsWater(t *testing.T) {
	for _, c := range []struct {
		build string
		share float64 // of its sugars
		off   float64
	}{
		{"50 g ± 0.0001 g core:orange-juice-concentrate", 0.73, 0.01},
		{"50 g ± 0.0001 g core:orange-juice-concentrate, 66 g ± 0.0001 g core:water-pure", 0.32, 0.01},
		{"50 g ± 0.0001 g core:orange-juice-concentrate, 135 g ± 0.0001 g core:water-pure", 0, 0.001},
		{"50 g ± 0.0001 g core:apple-juice-concentrate, 140 g ± 0.0001 g core:water-pure", 0, 0.05},
	} {
		a := assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild: ["+c.build+"]\n", 100)
		added, _, _ := a.AmountOf(constituent.AddedSugar)
		sugars, _, _ := a.AmountOf(constituent.Sugar)
		assert.InDelta(t, c.share, added/sugars, c.off, c.build)
	}
}

// Two juices have the water of the drink between them: 40 g for the 70 + 70 g that left, of
// which a few milligrams were their acetic acid.
func TestTwoJuicesShareTheWater(t *testing.T) {
	a := juiced(t, cherry+", 100 g ± 0.0001 g core:apple-juice", "reduce: {to: 60 g ± 0.0001 g}", "60 g ± 0.0001 g pot, 40 g ± 0.0001 g core:water-pure")
	dry := juiced(t, cherry+", 100 g ± 0.0001 g core:apple-juice", "reduce: {to: 60 g ± 0.0001 g}", "60 g ± 0.0001 g pot")
	some, _, _ := a.AmountOf(constituent.AddedSugar)
	all, _, _ := dry.AmountOf(constituent.AddedSugar)
	assert.InDelta(t, 100.0/140, some/all, 1e-4)
}

// Of a juice whose sugars nobody states the added ones are not known either.
func TestAddedSugarsOfAnUnknownJuiceAreUnknown(t *testing.T) {
	a := juiced(t, "100 g own:press", "reduce: {to: 30 g}", "30 g pot")
	grams, most, known := a.AmountOf(constituent.AddedSugar)
	assert.Zero(t, grams)
	assert.False(t, known)
	assert.Greater(t, most, 5.0)
}

// A step that takes all there is says so, and where.
func TestAStepThatLeavesNothingIsRefused(t *testing.T) {
	said := assaytest.Refused(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild: [20 g core:water-pure]\nfinish:\n  - split: {keep: {WATER: 0 %}, because: \"test\"}\n")
	assert.Contains(t, said, "test:5:5: split leaves nothing (keep some of it)")
}

// The sugars of elderberry juice are not told apart from its carbohydrate: what of them is added
// once it is boiled down may be nothing, and has a bound.
func TestAddedSugarsOfAJuiceWithABound(t *testing.T) {
	for steps, unknown := range map[string]bool{"reduce: {to: 30 g}": true, "strain: {collect: 30 g, through: cloth}": false} {
		a := juiced(t, "100 g core:elderberry-juice", steps, "30 g pot")
		added, addedMost, _ := a.AmountOf(constituent.AddedSugar)
		sugars, sugarsMost, _ := a.AmountOf(constituent.Sugar)
		assert.Zero(t, sugars+added, steps)
		if unknown {
			assert.InDelta(t, 0.73, addedMost/sugarsMost, 0.02, steps) // 70 ml of 95.5 have gone
		} else {
			assert.Zero(t, addedMost, steps)
		}
	}
}

// That water has gone is no word on acids: a juice boiled down and brought back has its pH, and
// a titration of it leaves the sugars what they are.
func TestWaterThatHasGoneSaysNothingOfAcids(t *testing.T) {
	const steps = "reduce: {to: 40 g ± 0.00001 g}, dilute: {to: 100 g ± 0.00001 g}"
	for _, juice := range []string{"sour-cherry-juice", "apple-juice", "plum-juice", "carrot-juice"} {
		line := "100 g ± 0.00001 g core:" + juice
		plain, back := juiced(t, line, "add: [0.00001 g core:water-pure]", "90 g pot"), juiced(t, line, steps, "90 g pot")
		assert.InDelta(t, plain.Chemistry.PH.Mean, back.Chemistry.PH.Mean, 0.005, juice)
		assert.InDelta(t, plain.Chemistry.PH.Low, back.Chemistry.PH.Low, 0.02, juice)
	}
	a := juiced(t, cherry, "reduce: {to: 30 g ± 0.0001 g}, measured: {titration: [[0 ml, 3.30], [5 ml, 3.80], [10 ml, 4.30], [20 ml, 5.20], [28 ml, 7.00]], base: 0.1 mol/l, sample: 5 g}", "30 g ± 0.0001 g pot")
	added, _, _ := a.AmountOf(constituent.AddedSugar)
	assert.InDelta(t, 6.3, added, 0.1)
}
