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
		{"with the sugar of a syrup: 6.3 + 50", cherry + ", 50 g ± 0.0001 g core:sugar-white", "reduce: {to: 80 g ± 0.0001 g}", "80 g ± 0.0001 g pot", 56.3},
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

// Two juices have the water of the drink between them: 40 g for the 70 + 70 g that left.
func TestTwoJuicesShareTheWater(t *testing.T) {
	a := juiced(t, cherry+", 100 g ± 0.0001 g core:apple-juice", "reduce: {to: 60 g ± 0.0001 g}", "60 g ± 0.0001 g pot, 40 g ± 0.0001 g core:water-pure")
	dry := juiced(t, cherry+", 100 g ± 0.0001 g core:apple-juice", "reduce: {to: 60 g ± 0.0001 g}", "60 g ± 0.0001 g pot")
	some, _, _ := a.AmountOf(constituent.AddedSugar)
	all, _, _ := dry.AmountOf(constituent.AddedSugar)
	assert.InDelta(t, 100.0/140, some/all, 1e-6)
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
