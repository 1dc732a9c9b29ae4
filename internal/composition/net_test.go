package composition_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// vague is an invented food whose sugars are so uncertain that any one of them is allowed
// more by its own bound (the room that the total leaves and two of its standard
// deviations) than there is of all.
func vague(t *testing.T, lib assaytest.Library) *food.Profile {
	t.Helper()
	f := &food.Food{ID: food.ID{Table: "invented", Code: "vague"}, Names: []food.Name{{Text: "Vague"}}, Group: "fruit juice", Edible: food.None}
	for _, v := range []struct {
		id         constituent.ID
		amount, sd float64
	}{{"WATER", 88, 1}, {"CHOCDF", 10, 0.5}, {"SUGAR", 4, 3}, {"GLUS", 1, 0.1}} {
		f.Values = append(f.Values, food.Value{
			Constituent: v.id, Amount: v.amount, SD: v.sd, N: 20, Low: food.None, High: food.None, Limit: food.None, State: estimate.Measured,
		})
	}
	lib[f.ID] = f
	p := food.Enter(f, nil)
	require.Greater(t, p.Cell("SUCS").Bound, p.Cell("SUGAR").Amount, "the bound by itself is more than all sugars")
	return p
}

// No part is more than its whole, with every unknown part at its most too: in a drink, in
// 100 g and where a contribution says how much more of it there may be. What the whole
// itself may be at most is what limits it, so 30 g of another food that knows all its
// sugars add what they have and no more.
func TestEndsOfPartsLieUnderTheirTotals(t *testing.T) {
	lib := assaytest.Core(t)
	vague(t, lib)
	const text = `
drink: "Net"
serves: 1
build:
  - 100 g invented:vague
  - 30 g core:sugar-white
`
	a := assaytest.Assay(t, lib, text, 200)
	sugar, sucrose := assaytest.Figure(t, a.PerServing, "SUGAR"), assaytest.Figure(t, a.PerServing, "SUCS")
	require.True(t, sucrose.Partial)
	require.False(t, sugar.Partial, "all of the sugars are known")
	assert.InDelta(t, 34, sugar.Mean, 0.1)
	assert.InDelta(t, 34, sugar.WithBounds, 0.1)
	assert.InDelta(t, sugar.Mean, sucrose.WithBounds, 0.1, "no more sucrose than sugars")
	assert.LessOrEqual(t, sucrose.UpTo, sugar.UpTo+1e-12)
	assert.InDelta(t, sucrose.Mean/sucrose.WithBounds, sucrose.Coverage, 1e-9)
	for _, c := range sucrose.Contributions {
		if c.Food == "invented:vague" {
			require.True(t, c.Unknown)
			assert.InDelta(t, 4, c.Bound, 0.01, "as much as all its sugars")
		}
	}
	per100 := assaytest.Figure(t, a.Per100g, "SUCS")
	assert.InDelta(t, sucrose.WithBounds/1.3, per100.WithBounds, 1e-6)
	assert.LessOrEqual(t, per100.UpTo, assaytest.Figure(t, a.Per100g, "SUGAR").UpTo+1e-12)
}

// Each food is netted by itself: the sugars of a neighbour leave no room for more sucrose
// in the juice.
func TestEndsAreNettedFoodByFood(t *testing.T) {
	lib := assaytest.Core(t)
	vague(t, lib)
	a := assaytest.Assay(t, lib, "drink: \"Net\"\nserves: 1\nbuild: [100 g invented:vague, 30 g core:glucose, 1 g core:sugar-white]\n", 200)
	assert.Greater(t, assaytest.Figure(t, a.PerServing, "SUGAR").WithBounds, 30.0)
	assert.InDelta(t, 1+4, assaytest.Figure(t, a.PerServing, "SUCS").WithBounds, 0.01)
}
