package recipe_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// What an own food states is held to what a food can be: arithmetic (parts and wholes),
// and the energy of pure fat, 37 kJ/g by Regulation (EU) No 1169/2011, Annex XIV.
func TestOwnFoodsThatCannotBeAreRefused(t *testing.T) {
	cases := []struct {
		food, says string // says is empty where nothing is wrong
	}{
		{"per: 100 g, values: {FAT: 150 g}", `test:4:60: own food "x": FAT 150 g makes 150 g in 100 g, and there is no food with more than 100 (check`},
		{"per: 100 g, values: {CAFFN: 150000 mg}", "makes 150 g in 100 g"},
		{"per: 50 g, values: {FAT: 60 g}", "FAT 60 g makes 120 g in 100 g"},
		{"per: 100 ml, density: 0.92 g/ml, values: {FAT: 100 g}", "makes 108.7 g"},
		{"per: 100 ml, density: 1.32 g/ml, values: {SUGAR: 86 g}", ""},
		{"per: 100 g, values: {SUGAR: < 400 g}", "SUGAR < 400 g makes 400 g"},
		{"per: 100 g, values: {FAT: 100 g}", ""},
		{"per: 100 g, values: {ENERC: 5000 kJ}", "ENERC 5000 kJ makes 5000 kJ in 100 g, and there is no food with more than 3900"},
		{"per: 100 g, values: {ENERC_KCAL: 1200 kcal}", "no food with more than 932"},
		{"per: 100 g, values: {ENERC: 3700 kJ, ENERC_KCAL: 900 kcal, FAT: 100 g}", ""},
		{"per: 100 g, values: {CHOAVL: 5 g, SUGAR: 10 g}", "CHOAVL 5 g is less than its parts: SUGAR 10 g (check the figures"},
		{"per: 100 g, values: {CHOAVL: 9.9 g, SUGAR: 10 g}", ""}, // both rounded
		{"per: 100 g, values: {CHOAVL: 9.0 g, SUGAR: 10 g ± 1 g}", ""},
		{"per: 100 g, values: {SUGAR: 10 g, GLUS: 6 g, FRUS: 6 g}", "SUGAR 10 g is less than its parts: GLUS 6 g, FRUS 6 g"},
		{"per: 100 g, values: {CHOAVL: < 0.5 g, SUGAR: 3 g}", "CHOAVL < 0.5 g is less than its parts"},
		{"per: 100 g, values: {CHOAVL: 3 g, SUGAR: < 5 g}", ""},
		{"per: 100 g, values: {CHOAVL: 9 g, SUGAR: 10 g}", ""}, // each may be a half off
		{"per: 100 g, values: {CHOAVL: 8.9 g, SUGAR: 10 g}", "CHOAVL 8.9 g is less than its parts"},
		{"per: 100 g, values: {CHOAVL: 8.0 g ± 1 g, SUGAR: 9.7 g ± 1 g}", ""}, // two standard deviations of both, 2·√(2/3)
		{"per: 100 g, values: {CHOAVL: 8.0 g ± 1 g, SUGAR: 9.8 g ± 1 g}", "is less than its parts"},
		{"per: 100 g, values: {WATER: 99.9 g, SUGAR: < 0.5 g}", ""}, // it may be none
		{"per: 100 g, values: {FAT: < 100.4 g}", "FAT < 100.4 g makes 100.4 g"},
		{"per: 100 g, values: {CHOAVL: < 0.5 g, SUGAR: 0.6 g}", "CHOAVL < 0.5 g is less than its parts"},
		{"per: 100 g, values: {SUGAR: 5 g, SUGAD: 7 g}", "SUGAD 7 g is more than SUGAR 5 g"},
		{"per: 100 g, values: {FAT: 60 g, CHOAVL: 90 g, PROCNT: 90 g, WATER: 99 g}", `test:4:3: own food "x": WATER 99 g, PROCNT 90 g, FAT 60 g, CHOAVL 90 g make 339 g in 100 g`},
		{"per: 100 g, values: {WATER: 88 g, FAT: 3.5 g, PROCNT: 3.3 g, LACS: 4.7 g, ASH: 0.8 g}", ""}, // 100.3 by rounding
		{"per: 100 g, values: {WATER: 60 g, CA: 30 g, NA: 20 g}", "WATER 60 g, NA 20 g, CA 30 g make 110 g"},
		{"per: 100 g, values: {WATER: 60 g, CAFFN: 50 g}", "CAFFN 50 g leaves no room beside its water and alcohol"},
		{"per: 100 g, values: {NA: 60 g}", "NA 60 g makes 60 g in 100 g, and the salt with the most of it (Na2CO3) has 43.38 g"}, // IUPAC: 2 × 22.99 of 105.988
		{"per: 100 g, values: {NA: 43.4 g}", ""},
		{"per: 100 g, values: {CAFFN: 90 g, THEBRN: 90 g}", "CAFFN 90 g, THEBRN 90 g together leave no room"},
		{"per: 100 g, values: {WATER: 50 g, CAFFN: 30 g, THEBRN: 30 g}", "CAFFN 30 g, THEBRN 30 g together leave no room"},
		{"per: 100 g, values: {CAFFN: 50 g, THEBRN: 50 g}", ""},
		{"per: 100 g, values: {CAFFN: 90 g, CITAC: 90 g}", "CITAC 90 g, CAFFN 90 g together make more than 100 g in 100 g"},
		{"per: 100 g, values: {MALAC: 60 g, CITAC: 60 g}", "make 120 g in 100 g"},
		{"per: 100 g, values: {CAFFN: 50 g, CITAC: 50 g}", ""},
		{"per: 100 g, values: {FAT: trace, SUGAR: unknown, NA: 39 g, CLD: 60.6 g}", ""},
		{"per: 100 g, values: {CHOAVLM: 105 g, CHOAVL: 99 g}", ""}, // starch in monosaccharide equivalents
	}
	lib := assaytest.Core(t)
	for _, c := range cases {
		text := "drink: x\nserves: 1\nfoods:\n  x: {name: Test, source: \"invented\", " + c.food + "}\nbuild: [10 g own:x, 90 g core:water-pure]\n"
		_, err := find(t, lib, text)
		if c.says == "" {
			assert.NoError(t, err, c.food)
		} else {
			assert.ErrorContains(t, err, c.says, c.food)
		}
	}
}

// A row of a table that prints what cannot be is not calculated with, as food or lender.
func TestATableRowThatCannotBeIsRefused(t *testing.T) {
	lib := assaytest.Core(t)
	odd := &food.Food{
		ID: food.ID{Table: "other", Code: "1"}, Edible: food.None, Density: food.Density{GramsPerMl: food.None, SD: food.None},
		Values: []food.Value{{Constituent: constituent.Protein, Amount: 750, SD: math.NaN(), Low: math.NaN(), High: math.NaN(), Limit: math.NaN(), State: estimate.Calculated}},
	}
	lib[odd.ID] = odd
	for _, line := range []string{`"10 g other:1"`, `{food: "core:honey", amount: 10 g, fill: "other:1"}`} {
		_, err := find(t, lib, "drink: x\nserves: 1\nbuild: ["+line+"]\n")
		assert.ErrorContains(t, err, "other:1 has protein of 750 g in 100 g, as its table prints it, and that cannot be (take another row", line)
	}
	odd.Values[0].Amount = 104 // a label's serving of a few grams, rounded
	_, err := find(t, lib, "drink: x\nserves: 1\nbuild: [\"10 g other:1\"]\n")
	assert.NoError(t, err)
}
