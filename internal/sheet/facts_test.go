package sheet_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/label"
	"sipsum/internal/note"
	"sipsum/internal/sheet"
)

// cardOf makes the card of 100 g of a pack that states these values.
func cardOf(t *testing.T, rules, values string) *label.Card {
	t.Helper()
	s := built(t, "drink: \"Pack\"\nserves: 1\nfoods:\n  p: {name: \"Pack\", per: 100 g, values: {"+values+"}, source: \"invented\", allergens: []}\nbuild: [100 g own:p]\n", rules)
	cards := s.Cards()
	return &cards[0]
}

func noteOf(c *label.Card, kind string) string {
	for _, n := range c.Notes {
		if n.Kind == kind {
			return n.Text
		}
	}
	return ""
}

// What is no liquid has no volume that anybody would read, so it is declared by its mass
// (Regulation (EU) No 1169/2011, Article 32(2): a drink is declared per 100 ml).
func TestWhatIsNoLiquidIsDeclaredByItsMass(t *testing.T) {
	for _, values := range []string{"FAT: 0 g ± 0 g, SUGAR: 0 g ± 0 g", "WATER: 1 g, SUCS: 99 g, FAT: 0 g"} {
		c := cardOf(t, "eu", values)
		assert.Equal(t, label.Per100g, c.Basis, values)
		assert.Zero(t, c.ServingMl, values)
	}
	assert.Equal(t, label.Per100ml, cardOf(t, "eu", "WATER: 90 g, SUCS: 10 g, FAT: 0 g").Basis)
}

// Of what nobody has stated the water of there are no millilitres: not on a menu, a leaf, a card or
// in a brief, and nothing stands for 100 ml. Who states its density knows its volume: 20 g of vodka
// of 40 % vol are 21.1 ml (OIML R 22: 0.948 g/ml) beside 30 ml, so 8.44 ml of alcohol are 16.5 % of it.
func TestAVolumeThatNobodyKnowsIsNotPrinted(t *testing.T) {
	drink := func(density string) *sheet.Sheet {
		return built(t, "drink: \"Cloudy\"\nserves: 1\nglass: 30 ml\nfoods:\n  c: {name: \"Cordial\", group: syrup, per: 100 g, "+density+"values: {SUGAR: 8 g}, source: \"invented\", allergens: []}\n  v: {name: \"Vodka\", group: spirit, per: 100 g, values: {WATER: 66.7 g, ALC: 33.3 g}, source: \"invented\", allergens: []}\nbuild: [30.9 g own:c, 20 g own:v]\n", "eu")
	}
	for density, known := range map[string]bool{"": false, "density: 1.03 g/ml, ": true} {
		s := drink(density)
		offer := s.Offer("cloudy.drink.yaml")
		assert.Equal(t, known, offer.ServingMl > 0, density)
		assert.Equal(t, known, offer.Cards[0].Basis == label.Per100ml, density)
		assert.Equal(t, known, len(s.Assay.Per100ml) > 0, density)
		assert.Equal(t, known, slices.ContainsFunc(s.CardLeaf().Below, func(x string) bool { return strings.HasSuffix(x, " ml") }), density)
		assert.Equal(t, known, slices.ContainsFunc(s.Assay.Notes, func(n note.Note) bool { return n.Kind == "glass" }), density)
		if known {
			assert.InDelta(t, 51.1, offer.ServingMl, 0.3)
		}
	}
}

// A pack that states xylitol alone: 60 g at 10 kJ and 2.4 kcal (Annex XIV), and 60 g of
// carbohydrate at least.
func TestAPackOfXylitol(t *testing.T) {
	c := cardOf(t, "eu", "XYLTL: 60 g")
	for key, want := range map[string]string{"energy": "600 kJ / 144 kcal", "carbohydrate": "60 g", "polyols": "60 g"} {
		r := rowOf(c, key)
		assert.Equal(t, want, r.Serving.Printed, key)
		assert.True(t, r.Incomplete, key)
	}
	us := cardOf(t, "us", "CHOAVL: 13 g")
	assert.Equal(t, "13 g", rowOf(us, "carbohydrate").Serving.Printed)
	assert.Equal(t, "50", rowOf(us, "calories").Serving.Printed)
	assert.True(t, rowOf(us, "calories").Incomplete)
}

// The energy that the pack itself states stands beside ours where it lies outside the interval:
// 13 g of sugars and 0.5 g of protein are 229.5 kJ, and what the tolerances of a pack leave open is 411.
func TestAPacksOwnEnergyIsCompared(t *testing.T) {
	const rest = "FAT: 0 g, SUCS: 13 g, SUGAR: 13 g, CHOAVL: 13 g, PROCNT: 0.5 g, FIBTG: 0 g, ALC: 0 g, OA: 0 g, POLYL: 0 g, ASH: 0.2 g, WATER: 86.3 g"
	assert.Contains(t, noteOf(cardOf(t, "eu", rest+", ENERC: 500 kJ"), "stated"), "state 500 kJ per serving themselves")
	assert.Contains(t, noteOf(cardOf(t, "eu", rest+", ENERC_KCAL: 120 kcal"), "stated"), "state 120 kcal per serving")
	assert.Empty(t, noteOf(cardOf(t, "eu", rest+", ENERC: 230 kJ"), "stated"))
	assert.Empty(t, noteOf(cardOf(t, "eu", rest), "stated"))
}
