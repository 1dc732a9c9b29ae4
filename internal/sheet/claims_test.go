package sheet_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/label"
	"sipsum/internal/sheet"
)

// claimOf finds a claim of the first card of a drink.
func claimOf(t *testing.T, s *sheet.Sheet, name string) label.Claim {
	t.Helper()
	for _, k := range s.Cards()[0].Claims {
		if k.Claim == name {
			return k
		}
	}
	require.Failf(t, "no such claim", name)
	return label.Claim{}
}

// sweetWater is 100 g of water with sugar in it, of which everything is known.
func sweetWater(t *testing.T, amount string) *sheet.Sheet {
	t.Helper()
	return built(t, `
drink: "Sweet water"
serves: 1
foods:
  wet: {name: "Wet", group: water, per: 100 g, values: {WATER: 100 g}, source: "invented", allergens: []}
  sweet: {name: "Sweet", group: sugar, per: 100 g, values: {WATER: 0 g, SUCS: 100 g}, source: "invented", allergens: []}
build: ["100 g ± 0 g own:wet", "`+amount+` own:sweet"]
`)
}

// The energy of a claim is that of the card, in kJ and in kcal: limits of Regulation (EC) No
// 1924/2006, annex, 20 kcal (80 kJ) and 4 kcal (17 kJ) in 100 ml.
func TestClaimsRestOnTheEnergyOfTheCard(t *testing.T) {
	s := sweetWater(t, "2.3 g ± 0.01 g")
	row := s.Cards()[0].Rows[0]
	require.Equal(t, "energy", row.Key)
	k := claimOf(t, s, "low energy")
	assert.True(t, k.Allowed, k.Why)
	assert.Contains(t, k.Why, fmt.Sprintf("%.1f kcal energy per 100 ml", *row.Per100ml.Kcal))
	assert.Contains(t, k.Why, fmt.Sprintf("%.1f kJ energy per 100 ml", *row.Per100ml.Value))
	assert.Contains(t, k.Source, "1924/2006")
	assert.Equal(t, "verified", k.Status)
	assert.False(t, claimOf(t, s, "energy-free").Allowed)
	assert.False(t, claimOf(t, sweetWater(t, "4.9 g ± 0.01 g"), "low energy").Allowed, "19 kcal, but 81 kJ")
}

// A carbohydrate that nobody has split may be sugar: what is not known is not zero.
func TestUnknownSugarsAreNoReasonForAClaim(t *testing.T) {
	s := built(t, `
drink: "A pack"
serves: 1
foods:
  pack: {name: "A pack", per: 100 g, density: 1 g/ml, values: {WATER: 90 g, CHOAVL: 9 g}, source: "invented", allergens: []}
build: [100 g own:pack]
`)
	for _, name := range []string{"low sugars", "sugars-free", "with no added sugars"} {
		k := claimOf(t, s, name)
		assert.False(t, k.Allowed, "%s: %s", name, k.Why)
		assert.Equal(t, "cannot be decided", k.Verdict, "%s: %s", name, k.Why)
	}
}

// The interval of a figure decides, not its mean: the same amount, known less well.
func TestClaimsAreJudgedAtTheEndOfTheInterval(t *testing.T) {
	of := func(amount string) label.Claim { return claimOf(t, sweetWater(t, amount), "low sugars") }
	sure, unsure := of("2.3 g ± 0.01 g"), of("2.3 g ± 0.8 g")
	assert.True(t, sure.Allowed, sure.Why)
	assert.False(t, unsure.Allowed, unsure.Why)
	assert.Equal(t, "not allowed yet", unsure.Verdict, unsure.Why)
	assert.True(t, unsure.Near)
	assert.Contains(t, unsure.Why, "at most 2.5; measure it")
}

// What was reduced in the drink sweetens as a concentrate does; an uneaten garnish does not.
func TestFoodsOfClaims(t *testing.T) {
	const text = `
drink: "Reduced"
serves: 1
foods:
  juice: {name: "Lemon", group: citrus juice, per: 100 g, density: 1 g/ml, values: {WATER: 90 g, SUCS: 10 g, SUGAD: 0 g}, source: "invented", allergens: []}
  honey: {name: "Honey", group: honey, per: 100 g, values: {WATER: 17 g, FRUS: 83 g}, source: "invented", allergens: []}
components:
  cordial:
    ingredients: [100 g own:juice]
    steps: [%s]
build: [20 g cordial, 80 g own:juice]
garnish: [{food: "own:honey", amount: 1 g, eaten: false}]
`
	plain := claimOf(t, built(t, fmt.Sprintf(text, "reduce: {to: 99.9 g}")), "with no added sugars")
	assert.Equal(t, "not allowed", plain.Verdict)
	assert.Contains(t, plain.Why, "Lemon")
	assert.NotContains(t, plain.Why, "Honey")
	poured := claimOf(t, built(t, fmt.Sprintf(text, "add: [1 g own:juice]")), "with no added sugars")
	assert.True(t, poured.Allowed, poured.Why)
	assert.Equal(t, "“contains naturally occurring sugars”", poured.Disclosure)
}

// Above 1.2 % vol no claim of eu is left (Article 4(3)), and every card says where its claims
// end.
func TestClaimsOfAStrongDrink(t *testing.T) {
	s := built(t, `
drink: "Strong"
serves: 1
foods:
  strong: {name: "Strong", per: 100 g, density: 0.98 g/ml, values: {WATER: 94 g, ALC: 6 g}, source: "invented", allergens: []}
build: [40 g own:strong]
`, "eu", "us")
	for _, k := range s.Cards()[0].Claims {
		assert.False(t, k.Allowed, k.Claim)
	}
	assert.Contains(t, claimOf(t, s, "fat-free").Why, "% vol alcohol in the drink")
	for _, c := range s.Cards() {
		said := 0
		for _, n := range c.Notes {
			if n.Kind == "scope" && n.Source != "" {
				said++
			}
		}
		assert.GreaterOrEqual(t, said, 2, c.Rules)
	}
}

// What a ferment may have made counts, and one that nobody bounds leaves a claim undecided.
func TestAlcoholOfAFerment(t *testing.T) {
	a := estimate.Amount{Mean: 1, WithBounds: 4, High: 2, UpTo: 5, Known: true}
	assert.InDelta(t, 2, sheet.MostFermented(a, false), 0)
	assert.InDelta(t, 5, sheet.MostFermented(a, true), 0)
	a.WithBounds, a.UpTo = math.NaN(), math.NaN()
	assert.InDelta(t, 2, sheet.MostFermented(a, false), 0)
	assert.True(t, math.IsNaN(sheet.MostFermented(a, true)))

	facts := label.Facts{ServingG: 100, Serving: map[constituent.ID]estimate.Amount{constituent.Alcohol: {Mean: 1, WithBounds: 1, Known: true}}}
	assert.False(t, sheet.StrengthOf(facts, false).Known, "no volume, no strength")
	facts.ServingMl = 100
	assert.InDelta(t, 1.27, sheet.StrengthOf(facts, false).Most, 0.005, "1 g at 0.789 g/ml")
	delete(facts.Serving, constituent.Alcohol)
	facts.ServingMl = 0
	assert.True(t, sheet.StrengthOf(facts, false).Known, "no alcohol, no strength")
}
