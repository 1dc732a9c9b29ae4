package recipe_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
)

func own(t testing.TB, entry string) *food.Food {
	t.Helper()
	r, err := find(t, assaytest.Library{}, "drink: x\nserves: 1\nfoods:\n  a: {"+entry+", source: \"pack\"}\nbuild: [\"10 g own:a\"]\n")
	require.NoError(t, err)
	return r.Lines[r.Drink.Build[0].Path].Profile.Food
}

// Values are brought to 100 g and the vocabulary's unit; a ± is rectangular, a limit a limit.
func TestAnOwnFoodIsAFoodPer100g(t *testing.T) {
	f := own(t, `name: "Oat", group: plant drink, per: 50 ml, density: 1.25 g/ml ± 0.03 g/ml, values: {SUGAR: 5 g, NA: 0.1 g ± 0.03 g, FAT: 2 g ± 0.1 g sd, VITC: trace, CITAC: unknown, CA: < 30 mg}`)
	assert.Equal(t, food.ID{Table: food.Own, Code: "a"}, f.ID)
	assert.Equal(t, "Oat", f.Name())
	assert.Equal(t, "plant drink", f.Group)
	assert.Equal(t, 1.25, f.Density.GramsPerMl)
	assert.InDelta(t, 0.03/math.Sqrt(3), f.Density.SD, 1e-12)
	assert.False(t, food.Stated(f.Edible))
	assert.Empty(t, f.Marks, "nobody says what allergens it has")
	per := 100 / (50 * 1.25) // 50 ml are 62.5 g
	// 10 g in 100 ml, 9 to 11 as written, is accepted from 7.2 to 13.2 g (Commission guidance of
	// 2012: 20 %), and 1.382 standard deviations of a normal hold 83.3 %.
	sugarSD := (13.2 - 7.2) / 2 / 1.382 / 1.25
	for id, want := range map[constituent.ID]food.Value{
		"SUGAR": {Amount: 5 * per, SD: sugarSD, Limit: food.None, State: estimate.Calculated},
		"NA":    {Amount: 100 * per, SD: 30 * per / math.Sqrt(3), Limit: food.None, State: estimate.Calculated},
		"FAT":   {Amount: 2 * per, SD: 0.1 * per, Limit: food.None, State: estimate.Calculated},
		"VITC":  {Amount: food.None, SD: food.None, Limit: food.None, State: estimate.Trace},
		"CITAC": {Amount: food.None, SD: food.None, Limit: food.None, State: estimate.Unknown},
		"CA":    {Amount: food.None, SD: food.None, Limit: 30 * per, State: estimate.Below},
	} {
		v, ok := f.Value(id)
		require.True(t, ok, id)
		for what, pair := range map[string][2]float64{"amount": {want.Amount, v.Amount}, "sd": {want.SD, v.SD}, "limit": {want.Limit, v.Limit}} {
			if math.IsNaN(pair[0]) {
				assert.False(t, food.Stated(pair[1]), "%s of %s", what, id)
			} else {
				assert.InEpsilon(t, pair[0], pair[1], 1e-4, "%s of %s", what, id)
			}
		}
		assert.Equal(t, want.State, v.State, id)
		assert.Equal(t, food.Own, v.Source)
		assert.Equal(t, "a", v.Ref)
	}
	assert.Len(t, f.Values, 6)
	assert.Equal(t, 5.0, own(t, `name: "Oat", per: 100 g, values: {SUGAR: 5 g}`).Values[0].Amount)
}

func TestWhatIsSaidOfAllergensIsStated(t *testing.T) {
	assert.Equal(t, []food.Mark{{Kind: "allergen", Value: "oats", Source: "pack"}, {Kind: "allergen", Value: "almond", Source: "pack"}},
		own(t, `name: "Oat", per: 100 g, values: {SUGAR: 5 g}, allergens: [oats, almond]`).Marks)
	assert.Equal(t, []food.Mark{{Kind: "allergen", Source: "pack"}}, own(t, `name: "Oat", per: 100 g, values: {SUGAR: 5 g}, allergens: []`).Marks, "none is a statement too")
}

func TestWhatAnOwnFoodCannotSay(t *testing.T) {
	for entry, says := range map[string]string{
		`name: "Oat", per: 100 ml, values: {SUGAR: 5 g}`:                 `own food "a" states its values per volume, but no density (add density: 1.03 g/ml)`,
		`name: "Oat", per: 100 g, values: {SUGER: 5 g}`:                  `unknown constituent "SUGER" (did you mean sugars (SUGAR)`,
		`name: "Oat", per: 100 g, values: {SUGAR: 5 kJ}`:                 `SUGAR is given in "kJ" (write it in g)`,
		`name: "Oat", per: 100 g, values: {ENERC: 300 g}`:                `ENERC is given in "g" (write it in kJ)`,
		`name: "Oat", per: 100 g, values: {malic acid: 1 g, MALAC: 2 g}`: `malic acid of own food "a" is stated twice`,
	} {
		_, err := find(t, assaytest.Library{}, "drink: x\nserves: 1\nfoods:\n  a: {"+entry+", source: \"pack\"}\nbuild: [\"10 g own:a\"]\n")
		assert.ErrorContains(t, err, says, entry)
		assert.NotContains(t, err.Error(), "no own food", "the line that pours it is right")
		assert.Equal(t, fail.Wrong, fail.ExitCode(err))
	}
}

// What is stated together is held to the whole: each part by its own figure, or by what
// stands below it; a rider is no part.
func TestClaimsOverTheWhole(t *testing.T) {
	of := func(stated map[constituent.ID]float64) (string, bool) {
		claims := recipe.Claims{}
		for id, x := range stated {
			c := constituent.Must(id)
			claim, ok := recipe.ClaimOf(drink.Stated{Tag: string(id), Quantity: drink.Quantity{Number: x, Unit: c.Unit, Decimals: 1}}, c, 1)
			require.True(t, ok)
			claims[id] = claim
		}
		parts, _, over := claims.OverTheWhole()
		return parts, over
	}
	parts, over := of(map[constituent.ID]float64{"WATER": 60, "SUGAR": 30, "ALC": 10.2})
	assert.True(t, over)
	for _, part := range []string{"WATER 60 g", "SUGAR 30 g", "ALC 10.2 g"} {
		assert.Contains(t, parts, part)
	}
	_, over = of(map[constituent.ID]float64{"WATER": 60, "SUGAR": 30, "ALC": 10.1})
	assert.False(t, over, "three figures rounded to 0.1 may be 0.15 too much")
	_, over = of(map[constituent.ID]float64{"WATER": 60, "CHOAVL": 40, "SUGAR": 40, "GLUS": 40})
	assert.False(t, over, "a part is in its total")
	_, over = of(map[constituent.ID]float64{"WATER": 60, "GLUS": 25, "FRUS": 25})
	assert.True(t, over)
	_, over = of(map[constituent.ID]float64{"WATER": 60, "ASH": 40, "K": 40000})
	assert.False(t, over, "ash is of its salts")
	_, over = of(map[constituent.ID]float64{"WATER": 60, "K": 40500})
	assert.True(t, over)
	_, ok := recipe.ClaimOf(drink.Stated{State: drink.Trace}, constituent.Must("SUGAR"), 1)
	assert.False(t, ok)
	_, ok = recipe.ClaimOf(drink.Stated{State: drink.Unknown}, constituent.Must("SUGAR"), 1)
	assert.False(t, ok)
}

// What the owner of a food does not know is not known to be none, whatever is usual in its group: no
// rule of the group knows this one.
func TestAStatedUnknownIsNoZeroOfItsGroup(t *testing.T) {
	for state, known := range map[string]bool{"": true, ", CAFFN: unknown, ALC: unknown": false} {
		p := food.Enter(own(t, `name: "Cordial", group: syrup, per: 100 g, values: {WATER: 50 g, SUGAR: 45 g`+state+`}`), nil)
		for _, id := range []constituent.ID{"CAFFN", "ALC"} {
			assert.Equal(t, known, p.Cell(id).Known, "%s %s", id, state)
		}
	}
}
