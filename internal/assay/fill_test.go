package assay_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// A copy of a food that changes one figure is the same food in all others: a borrowed figure is
// still that of any lemon, and to state the sodium tells nothing of the sugars.
func TestACopyKeepsTheSpreadOfItsLender(t *testing.T) {
	core := assaytest.Core(t)
	for _, c := range []struct {
		code    string
		changed constituent.ID
		to      float64
		moves   []constituent.ID // with what is changed, by the mass that it takes
	}{
		{"lemon-juice", "NA", 10, nil}, {"espresso", "NA", 10, nil}, {"milk-whole", "NA", 50, nil},
		{"lemon-juice", "CITAC", 5000, []constituent.ID{"OA", "CHOCDF", "WATER"}},
	} {
		lender := core[food.ID{Table: "core", Code: c.code}]
		require.NotNil(t, lender, c.code)
		own := &food.Food{ID: food.ID{Table: food.Own, Code: "copy"}, Names: lender.Names, Group: lender.Group, Edible: food.None, Values: []food.Value{{
			Constituent: c.changed, Amount: c.to, Low: food.None, High: food.None, Limit: food.None, State: estimate.Calculated, Source: food.Own,
		}}}
		was, is := hundred(food.Enter(lender, nil)), hundred(food.Enter(own, lender))
		compared := 0
		for _, of := range constituent.All() {
			a, b := was(of.ID), is(of.ID)
			if of.ID == c.changed {
				assert.InEpsilon(t, c.to, b.Mean, 1e-9, c.code)
				assert.InDelta(t, b.Low, b.High, 1e-9*c.to, c.code)
				continue
			}
			moved := false
			for _, id := range c.moves {
				moved = moved || id == of.ID
			}
			if a.Mean == 0 || moved {
				continue
			}
			compared++
			wide := max(a.High-a.Low, 1e-9)
			assert.InDelta(t, a.Mean, b.Mean, 0.05*wide, "mean of %s of %s", of.ID, c.code)
			assert.InDelta(t, a.Low, b.Low, 0.05*wide, "low end of %s of %s", of.ID, c.code)
			assert.InDelta(t, a.High, b.High, 0.05*wide, "high end of %s of %s", of.ID, c.code)
		}
		assert.Greater(t, compared, 15, c.code)
	}
}

// No tonic is sold with more quinine than the law allows in a soft drink (85 mg/kg: German
// Aromenverordnung, annex 4), however far the published figures lie apart.
func TestNoMoreThanTheLawAllows(t *testing.T) {
	tonic := assaytest.Core(t)[food.ID{Table: "core", Code: "tonic-water"}]
	require.NotNil(t, tonic)
	quinine := hundred(food.Enter(tonic, nil))("quinine")
	assert.LessOrEqual(t, quinine.High, 8.5)
	assert.Greater(t, quinine.High, quinine.Mean)
	assert.Less(t, quinine.Low, quinine.Mean)
}

// hundred draws a food and gives what 100 g of it have of a constituent.
func hundred(p *food.Profile) func(constituent.ID) estimate.Summary {
	const draws = 1000
	columns := ledger.NewColumns([]*food.Profile{p})
	drawer := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: draws + 1}, columns)
	pot := drawer.NewPot()
	pot.Pour(p, drawer.PerGram(p), estimate.Constant(draws+1, 100), "x")
	return func(id constituent.ID) estimate.Summary {
		col := pot.Total(id)
		for i := range col {
			col[i] *= constituent.Must(id).PerGram
		}
		return estimate.Summarise(col)
	}
}
