package label_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/label"
)

// only are facts of which nothing is known but these.
func only(amounts map[constituent.ID]float64) label.Facts {
	f := label.Facts{ServingG: 100, ServingMl: 100, Serving: map[constituent.ID]estimate.Amount{}}
	for id, x := range amounts {
		f.Serving[id] = estimate.Amount{Mean: x, WithBounds: x, Known: true}
	}
	return f
}

// A syrup of which a pack states 60 g of xylitol and nothing else: 10 kJ and 2.4 kcal a gram
// (Regulation (EU) No 1169/2011, Annex XIV), and 60 g of carbohydrate at least, under every set of
// rules that counts polyols as such.
func TestAKnownPartIsKnownOfItsWhole(t *testing.T) {
	f := only(grams{"XYLTL": 60000})
	eu := card(t, "eu", f)
	assert.Equal(t, "600 kJ / 144 kcal", row(t, eu, "energy").Per100ml.Printed)
	for _, key := range []string{"carbohydrate", "polyols"} {
		r := row(t, eu, key)
		assert.Equal(t, "60 g", r.Per100ml.Printed, key)
		assert.True(t, r.Incomplete, key)
	}
	assert.Contains(t, notes(eu), "carbohydrate: Carbohydrate: at least 60 g per serving")
	us := card(t, "us", f)
	assert.Equal(t, "60 g", row(t, us, "carbohydrate").Serving.Printed)
	assert.Equal(t, "140", row(t, us, "calories").Serving.Printed) // 60 · 2.4
	assert.Equal(t, "60 g", row(t, card(t, "ca", f), "carbohydrate").Serving.Printed)

	// Of a pack with available carbohydrate and no fibre 13 g are known of the total.
	us = card(t, "us", only(grams{"CHOAVL": 13}))
	assert.Equal(t, "13 g", row(t, us, "carbohydrate").Serving.Printed)
	assert.Equal(t, "50", row(t, us, "calories").Serving.Printed) // 13 · 4
	fat := row(t, card(t, "eu", only(grams{"FASAT": 2, "FAMS": 1})), "fat")
	assert.Equal(t, "3.0 g", fat.Per100ml.Printed)
	assert.True(t, fat.Incomplete)
}

// Total carbohydrate is what the mass leaves beside water, protein, fat, ash, alcohol and
// carbon dioxide (21 CFR 101.9(c)(6)), where all of the first four are known; calories follow.
// SR28 01077, whole milk: 88.13, 3.15, 3.25 and 0.67 g leave 4.80 g, beside 5.05 g of sugars.
func TestCarbohydrateByDifference(t *testing.T) {
	f := facts(100, grams{"WATER": 80, "PROCNT": 2, "FAT": 1, "ASH": 0.5, "ALC": 4, "CO2": 0.5, "CHOCDF": 11, "CHOAVL": 8, "SUGAR": 8, "OA": 3})
	us := card(t, "us", f)
	carbohydrate := row(t, us, "carbohydrate").Serving
	assert.InDelta(t, 12, *carbohydrate.Value, 1e-9)
	assert.InDelta(t, 4*12+4*2+9*1+7*4, *row(t, us, "calories").Serving.Value, 1e-9)
	assert.Nil(t, carbohydrate.Most)
	works, err := label.Explain("us", f)
	require.NoError(t, err)
	formulas := map[string]string{}
	for _, w := range works {
		formulas[w.Row] = w.Formula
	}
	assert.Equal(t, "MASS − WATER − PROCNT − FAT − ASH − ALC − CO2", formulas["carbohydrate"])

	f.Serving["ASH"] = estimate.Amount{WithBounds: 2}
	us = card(t, "us", f)
	assert.InDelta(t, 11, *row(t, us, "carbohydrate").Serving.Value, 1e-9, "what is known of it")

	milk := facts(237, grams{"WATER": 2.44 * 88.13, "PROCNT": 2.44 * 3.15, "FAT": 2.44 * 3.25, "ASH": 2.44 * 0.67, "SUGAR": 2.44 * 5.05, "CHOAVL": 2.44 * 5.05, "OA": 0.4, "CHOCDF": 12.7})
	milk.ServingG = 244
	us = card(t, "us", milk)
	assert.Equal(t, "12 g", row(t, us, "carbohydrate").Serving.Printed)
	assert.Equal(t, "12 g", row(t, us, "sugars").Serving.Printed)
	assert.GreaterOrEqual(t, *row(t, us, "carbohydrate").Serving.Value, *row(t, us, "sugars").Serving.Value)
}

// A row is bounded by what holds it: no trans fat without fat, no added sugar beyond sugars. A
// bound that prints 0 prints 0; one that prints more is not determined, and says how much.
func TestARowIsNoMoreThanWhatHoldsIt(t *testing.T) {
	f := facts(100, nil)
	for _, id := range []constituent.ID{"FATRN", "SUGAD", "VITD"} {
		delete(f.Serving, id)
	}
	us := card(t, "us", f)
	assert.Equal(t, "0 g", row(t, us, "trans-fat").Serving.Printed, "beside no fat")
	assert.Equal(t, "0 g", row(t, us, "added-sugars").Serving.Printed)
	assert.Equal(t, "not determined", row(t, us, "vitamin-d").Serving.Printed)
	f.Serving["VITD"] = estimate.Amount{WithBounds: 0.04}
	assert.Equal(t, "0 mcg", row(t, card(t, "us", f), "vitamin-d").Serving.Printed)
	f.Serving["FAT"] = estimate.Amount{Mean: 3, WithBounds: 3, Known: true}
	us = card(t, "us", f)
	assert.Equal(t, "not determined", row(t, us, "trans-fat").Serving.Printed)
	assert.True(t, row(t, us, "trans-fat").Unknown)
	assert.Contains(t, notes(us), "trans-fat: Trans Fat: not determined; at most 3 g per serving.")
}

// "0 g" and "<0.5 g" say something of all that is in the drink: where one of two foods is not
// known, they stand only if the most that there can be prints so too, by the end of the
// interval (European Commission guidance of December 2012, section 6).
func TestASmallAmountIsOfTheWholeDrink(t *testing.T) {
	for _, c := range []struct {
		a    estimate.Amount
		want string
	}{
		{estimate.Amount{Mean: 0.2, WithBounds: 0.2, Known: true}, "<0.5 g"},
		{estimate.Amount{Mean: 0.2, WithBounds: 0.4, UpTo: 0.45, Known: true}, "<0.5 g"},
		{estimate.Amount{Mean: 0.2, WithBounds: 0.4, UpTo: 0.7, Known: true}, "not determined"},
		{estimate.Amount{Mean: 0.2, WithBounds: 2, Known: true}, "not determined"},
		{estimate.Amount{Mean: 0.2, WithBounds: math.NaN(), Known: true}, "not determined"},
		{estimate.Amount{Mean: 0, WithBounds: 0.3, Known: true}, "<0.5 g"},
		{estimate.Amount{Mean: 0, WithBounds: 3, Known: true}, "not determined"},
		{estimate.Amount{Mean: 0.8, WithBounds: 3, Known: true}, "0.8 g"},
	} {
		f := facts(100, nil)
		f.Serving["PROCNT"] = c.a
		assert.Equal(t, c.want, row(t, card(t, "eu", f), "protein").Per100ml.Printed, "%v", c.a)
	}
}

// "Up to" is the end of the interval, of a sum the sum of the ends, rounded up: never below
// what an assay prints.
func TestUpToIsTheEndOfTheInterval(t *testing.T) {
	f := facts(100, nil)
	f.Serving["PROCNT"] = estimate.Amount{Mean: 2, WithBounds: 3, High: 2.3, UpTo: 3.4021, Known: true}
	eu := card(t, "eu", f)
	assert.InDelta(t, 3.4021, *row(t, eu, "protein").Serving.Most, 1e-12)
	assert.Contains(t, notes(eu), "Protein: at least 2 g per serving, which the card prints; with what is not known it can be up to 3.41 g.")
	assert.InDelta(t, 17*3.4021, *row(t, eu, "energy").Serving.Most, 1e-9)
	f.Serving["ENERC"] = estimate.Amount{Mean: 34, UpTo: 70, Known: true}
	assert.InDelta(t, 70, *row(t, card(t, "eu", f), "energy").Serving.Most, 1e-9, "what the assay prints of it")
}

// A polyol that the rules do not list has no factor: it counts nothing, and the energy says at
// least (21 CFR 101.9(c)(1)(i)(F) gives none to a polyol that is not in its table).
func TestAPolyolWithoutAFactor(t *testing.T) {
	f := facts(100, grams{"CHOCDF": 30, "POLYL": 20, "GLYRL": 15000, "SORTL": 5000, "CHOAVL": 10})
	calories := row(t, card(t, "us", f), "calories")
	assert.InDelta(t, 10*4+5*2.6, *calories.Serving.Value, 1e-9)
	assert.InDelta(t, 10*4+5*2.6+15*4, *calories.Serving.Most, 1e-9, "no more than carbohydrate")
	assert.True(t, calories.Incomplete)
	assert.Contains(t, notes(card(t, "anz", f)), "Energy: at least")
	assert.InDelta(t, 170+200, *row(t, card(t, "eu", f), "energy").Serving.Value, 1e-9, "a general factor of polyols")
}

// What is not known is unknown in the working too, and nothing there lacks a source.
func TestWorkingsOfTheUnknown(t *testing.T) {
	f := facts(100, grams{"CHOAVL": 10, "CHOCDF": 10})
	delete(f.Serving, "OA")
	delete(f.Serving, "SORTL")
	for _, rules := range label.Rules() {
		works, err := label.Explain(rules, f)
		require.NoError(t, err)
		for _, w := range works {
			for _, s := range w.Sources {
				assert.NotEmpty(t, s, "%s %s", rules, w.Row)
			}
			for _, term := range w.Terms {
				assert.NotEmpty(t, term.Source, "%s %s %s", rules, w.Row, term.Tag)
				if term.Tag == "OA" || term.Tag == "SORTL" {
					assert.Nil(t, term.Amount, "%s %s", rules, w.Row)
					assert.Nil(t, term.Gives, "%s %s", rules, w.Row)
				}
			}
		}
	}
}

// The energy that packs and tables state themselves is compared with ours, and a difference
// beyond the interval is said.
func TestStatedEnergyIsCompared(t *testing.T) {
	for _, c := range []struct {
		stated label.Stated
		noted  bool
	}{
		{label.Stated{}, false}, {label.Stated{Unit: "kJ", Amount: 100, Low: 95, High: 110}, false}, {label.Stated{Unit: "kJ", Amount: 90, Low: 95, High: 110}, true},
		{label.Stated{Unit: "kJ", Amount: 111, Low: 95, High: 110}, true}, {label.Stated{Unit: "kJ", Amount: 111, Low: 95, High: math.NaN()}, false}, {label.Stated{Unit: "kJ", Amount: 90, Low: 95, High: math.NaN()}, true},
	} {
		f := facts(100, nil)
		f.Stated = c.stated
		if c.noted {
			assert.Contains(t, notes(card(t, "eu", f)), "kJ per serving themselves", "%v", c.stated)
		} else {
			assert.NotContains(t, notes(card(t, "eu", f)), "themselves", "%v", c.stated)
		}
	}
}
