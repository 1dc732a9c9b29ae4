package label_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/label"
)

type grams = map[constituent.ID]float64

// Table to B.01.401 of the Food and Drug Regulations of Canada (consolidation of 15 June
// 2026), at the edges of its bands; zeros that hang on other rows.
func TestRoundingCanada(t *testing.T) {
	for _, c := range []struct {
		key     string
		amounts grams
		want    string
	}{
		{"calories", grams{"PROCNT": 4.9 / 4}, "0"}, {"calories", grams{"PROCNT": 5.0 / 4}, "5"}, {"calories", grams{"PROCNT": 52.0 / 4}, "50"}, {"calories", grams{"PROCNT": 56.0 / 4}, "60"},
		{"energy-kj", grams{"CHOCDF": 25}, "420 kJ"}, // 100 Calories × 4.184
		{"fat", grams{"FAT": 0.44}, "0 g"}, {"fat", grams{"FAT": 0.44, "FASAT": 0.3}, "0.4 g"}, {"fat", grams{"FAT": 0.74}, "0.5 g"}, {"fat", grams{"FAT": 4.8}, "5 g"}, {"fat", grams{"FAT": 5.6}, "6 g"},
		{"saturated", grams{"FAT": 1, "FASAT": 0.19}, "0 g"}, {"saturated", grams{"FAT": 1, "FASAT": 0.3}, "0.3 g"}, {"saturated", grams{"FAT": 5, "FASAT": 1.3}, "1.5 g"},
		{"cholesterol", grams{"CHOLE": 1.9}, "0 mg"}, {"cholesterol", grams{"CHOLE": 13}, "15 mg"},
		{"sodium", grams{"NA": 4}, "0 mg"}, {"sodium", grams{"NA": 138}, "140 mg"}, {"sodium", grams{"NA": 146}, "150 mg"},
		{"sugars", grams{"SUGAR": 0.49}, "0 g"}, {"sugars", grams{"SUGAR": 0.5}, "1 g"}, {"protein", grams{"PROCNT": 0.44}, "0.4 g"}, {"protein", grams{"PROCNT": 0.5}, "1 g"},
		{"potassium", grams{"K": 4.9}, "0 mg"}, {"potassium", grams{"K": 5}, "10 mg"}, {"potassium", grams{"K": 49}, "50 mg"}, {"potassium", grams{"K": 62}, "50 mg"}, {"potassium", grams{"K": 63}, "75 mg"}, {"potassium", grams{"K": 274}, "250 mg"}, {"potassium", grams{"K": 276}, "300 mg"},
		{"iron", grams{"FE": 0.049}, "0 mg"}, {"iron", grams{"FE": 0.05}, "0.1 mg"}, {"iron", grams{"FE": 0.6}, "0.5 mg"}, {"iron", grams{"FE": 0.63}, "0.75 mg"}, {"iron", grams{"FE": 2.7}, "2.5 mg"},
	} {
		assert.Equal(t, c.want, row(t, card(t, "ca", facts(100, c.amounts)), c.key).Serving.Printed, "%s %v", c.key, c.amounts)
	}
	c := card(t, "ca", facts(100, grams{"FAT": 9, "FASAT": 3, "FATRN": 1, "K": 62, "CHOCDF": 30, "SUGAR": 7}))
	assert.Equal(t, "20 %", row(t, c, "trans").Serving.DailyValue, "one for both: 4 g of 20 g")
	assert.Empty(t, row(t, c, "saturated").Serving.DailyValue)
	assert.Equal(t, "1 %", row(t, c, "potassium").Serving.DailyValue, "of the 50 mg printed: 1.5 % goes up to 1 of 3400")
	assert.Empty(t, row(t, c, "carbohydrate").Serving.DailyValue, "there is none")
	assert.Equal(t, "7 %", row(t, c, "sugars").Serving.DailyValue)
}

// Australia and New Zealand: not more than three significant figures (Standard 1.2.8-7),
// Calories are kJ / 4.18 (Schedule 11 S11-2). 592 kJ per 100 ml in 60 ml: FSANZ's example of the
// energy statement prints 355 kJ, 85 Cal and 142 Cal, and 1234.5 kJ as 1230. The panel of
// 699.9 kJ prints 700 kJ.
func TestAustraliaAndNewZealand(t *testing.T) {
	sixty := func(kj float64) label.Facts {
		f := facts(60, grams{"FAT": 0, "PROCNT": kj / 17})
		f.ServingG = 60
		return f
	}
	energy := row(t, card(t, "anz", sixty(592*0.6)), "energy")
	assert.Equal(t, "355 kJ / 85 Cal", energy.Serving.Printed)
	assert.Equal(t, "592 kJ / 142 Cal", energy.Per100ml.Printed)
	assert.Equal(t, "1230 kJ / 295 Cal", row(t, card(t, "anz", facts(100, grams{"PROCNT": 1234.5 / 17})), "energy").Serving.Printed)
	assert.Equal(t, "173 kJ / 41.5 Cal", row(t, card(t, "anz", facts(100, grams{"PROCNT": 173.35 / 17})), "energy").Per100ml.Printed)
	c := card(t, "anz", facts(100, grams{"PROCNT": 3.6, "FAT": 1.7, "CHOAVL": 31, "FIBTG": 6.1}))
	assert.Equal(t, "700 kJ / 167 Cal", row(t, c, "energy").Serving.Printed)
	assert.Equal(t, []string{"energy", "protein", "fat", "saturated", "carbohydrate", "sugars", "fibre", "sodium"}, keys(c))
	assert.Equal(t, []string{label.PerServing, label.Per100ml}, c.Columns)
	assert.Equal(t, "10 %", row(t, card(t, "anz", facts(100, grams{"PROCNT": 870.0 / 17})), "energy").Serving.Reference, "870 of 8 700 kJ")
	assert.Contains(t, keys(card(t, "anz", facts(100, grams{"POLYL": 5}))), "polyols", "from 5 g in 100 on")
	assert.NotContains(t, keys(card(t, "anz", facts(100, grams{"POLYL": 4.9}))), "polyols")
}

// Standard 2.7.1: from 0.5 % vol "not more than", above 1.15 % the strength; standard drinks of
// 10 g; the energy statement of 2025. 12.5 g of ethanol are 1.3 standard drinks.
func TestDrinksWithAlcoholInAustraliaAndNewZealand(t *testing.T) {
	said := func(grams float64) (all string) {
		for _, s := range card(t, "anz", facts(100, map[constituent.ID]float64{"ALC": grams})).Statements[1:] {
			all += s.Text + "\n"
		}
		return all
	}
	assert.Empty(t, said(0.38))                                                                              // 0.48 % vol
	assert.Contains(t, said(0.788), "Contains not more than 1 % alcohol by volume")                          // 0.998 %
	assert.Contains(t, said(0.9), "Contains not more than 1.2 %", "a ceiling is never below what it covers") // 1.14 %
	assert.NotContains(t, said(0.93), "not more than")                                                       // 1.18 %
	assert.Contains(t, said(12.5), "Approximately 1.3 standard drinks")
	assert.Contains(t, said(12.5), "363 kJ / 86.7 Cal per 100 mL") // 12.5 · 29
}

// TTB Procedure 2020-1, III: calories to 1 and below 5 zero, carbohydrate to 0.1 g, below 1 g
// "less than 1 gram", below 0.5 g zero; from 0.5 % vol on (27 CFR 16.10).
func TestDrinksWithAlcoholInTheUnitedStates(t *testing.T) {
	for _, c := range []struct {
		key     string
		amounts grams
		want    string
	}{
		{"calories", grams{"ALC": 5, "CHOCDF": 2.03}, "43"}, {"calories", grams{"ALC": 0.38, "CHOCDF": 10}, "45"}, {"calories", grams{"ALC": 0.69}, "0"}, {"calories", grams{"ALC": 0.72}, "5"},
		{"carbohydrate", grams{"ALC": 5, "CHOCDF": 10.46}, "10.5 g"}, {"carbohydrate", grams{"ALC": 5, "CHOCDF": 0.9}, "less than 1 g"}, {"carbohydrate", grams{"ALC": 5, "CHOCDF": 0.4}, "0 g"}, {"carbohydrate", grams{"CHOCDF": 10.46}, "10 g"},
		{"fat", grams{"ALC": 5, "FAT": 4.6}, "4.5 g"}, {"fat", grams{"ALC": 5, "FAT": 5.4}, "5 g"}, {"fat", grams{"ALC": 5, "FAT": 0.4}, "0 g"},
	} {
		assert.Equal(t, c.want, row(t, card(t, "us", facts(100, c.amounts)), c.key).Serving.Printed, "%s %v", c.key, c.amounts)
	}
}

// 21 CFR 101.9(f): with eight of the fifteen insignificant the simplified table leaves them
// out, but for calories, fat, sodium, carbohydrate and protein. Carbohydrate, fibre and protein
// are insignificant below 1 g (101.9(j)(4)), vitamins and minerals below 2 % of the daily value.
func TestShapesOfTheUnitedStates(t *testing.T) {
	soda := card(t, "us", facts(355, grams{"CHOCDF": 39, "SUGAR": 39, "SUGAD": 39, "NA": 45, "K": 60}))
	assert.Equal(t, label.Simplified, soda.Shape)
	assert.Equal(t, []string{"Saturated Fat", "Trans Fat", "Cholesterol", "Dietary Fiber", "Vitamin D", "Calcium", "Iron", "Potassium"}, soda.NotSignificant)
	assert.True(t, row(t, soda, "cholesterol").LeftOut)
	assert.False(t, row(t, soda, "fat").LeftOut, "stays, whatever it is")
	assert.False(t, row(t, soda, "added-sugars").LeftOut)
	assert.Equal(t, "serving size 11.8 fl oz (355 mL)", soda.ServingsLine)
	for _, c := range []struct {
		more grams
		want string
	}{
		{grams{"FAT": 3, "CHOLE": 10}, label.Simplified},                   // eight
		{grams{"FAT": 3, "CHOLE": 10, "FASAT": 2}, label.Vertical},         // seven
		{grams{"FAT": 3, "CHOLE": 10, "PROCNT": 0.9}, label.Simplified},    // less than 1 g
		{grams{"FAT": 3, "CHOLE": 10, "FE": 0.019 * 18}, label.Simplified}, // 1.9 %
		{grams{"FAT": 3, "CHOLE": 10, "FE": 0.02 * 18}, label.Vertical},    // 2 %
	} {
		amounts := grams{"CHOCDF": 39, "SUGAR": 39, "SUGAD": 39, "NA": 45, "K": 60}
		for id, x := range c.more {
			amounts[id] = x
		}
		got := card(t, "us", facts(355, amounts))
		assert.Equal(t, c.want, got.Shape, "%v", c.more)
		assert.Equal(t, c.want == label.Simplified, len(got.NotSignificant) > 0)
	}
	unknown := facts(355, nil)
	for _, id := range []constituent.ID{"FASAT", "FATRN", "CHOLE", "FIBTG", "SUGAR", "SUGAD", "VITD", "CA", "FE", "K", "FAT", "NA"} {
		delete(unknown.Serving, id)
	}
	assert.Equal(t, label.Vertical, card(t, "us", unknown).Shape, "what nobody knows is not insignificant")
	assert.Empty(t, card(t, "eu", facts(100, nil)).Shape)
}

// Regulation (EU) No 1169/2011, Annex XIII part A: vitamins and minerals from 7.5 % of the
// reference value in 100 ml of a drink, with its share; the guidance prints three figures of
// potassium. Polyols stand only where there is an amount to print.
func TestVoluntaryRowsOfTheEuropeanUnion(t *testing.T) {
	assert.NotContains(t, keys(card(t, "eu", facts(100, grams{"K": 149}))), "potassium")
	k := row(t, card(t, "eu", facts(200, grams{"K": 300, "VITC": 0})), "potassium")
	assert.Equal(t, "150 mg", k.Per100ml.Printed)
	assert.Equal(t, "8 %", k.Per100ml.Reference)
	assert.Equal(t, "15 %", k.Serving.Reference)
	partly := facts(100, nil)
	partly.Serving["K"] = estimate.Amount{Mean: 200, WithBounds: 240, Known: true}
	assert.NotContains(t, keys(card(t, "eu", partly)), "potassium", "a voluntary row of which something is missing is left out")
	partly.Serving["K"] = estimate.Amount{Mean: 200, WithBounds: 200.3, Known: true}
	assert.Contains(t, keys(card(t, "eu", partly)), "potassium")
	assert.Equal(t, "107 mg", row(t, card(t, "eu", facts(100, grams{"CA": 106.6})), "calcium").Per100ml.Printed)
	assert.Equal(t, "1.3 mg", row(t, card(t, "eu", facts(100, grams{"FE": 1.26})), "iron").Per100ml.Printed)
	assert.NotContains(t, keys(card(t, "eu", facts(100, grams{"POLYL": 0.007}))), "polyols")
	rich := card(t, "eu", facts(100, grams{"FAT": 9, "FASAT": 3, "FAMS": 4, "FAPU": 2, "CHOAVL": 9, "STARCH": 4, "POLYL": 2}))
	assert.Equal(t, []string{"energy", "fat", "saturates", "mono-unsaturates", "polyunsaturates", "carbohydrate", "sugars", "polyols", "starch", "fibre", "protein", "salt"}, keys(rich))
}
