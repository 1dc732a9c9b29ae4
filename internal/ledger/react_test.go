package ledger_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/ledger/ledgertest"
)

// turning makes a pot of a juice and of dry sugar, and a reaction with invented
// round weights.
func turning(t *testing.T) (*ledger.Pot, ledger.Reaction) {
	t.Helper()
	profiles := []*food.Profile{
		profile("juice", map[constituent.ID]float64{"WATER": 90, "SUCS": 10}),
		profile("sugar", map[constituent.ID]float64{"SUCS": 100}),
	}
	columns := ledger.NewColumns(profiles, "GLUS", "FRUS")
	drawer, pot := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: 21}, columns), ledger.New(columns, 21)
	for _, p := range profiles {
		pot.Pour(p, drawer.PerGram(p), column(21, 100), p.Food.ID.String())
	}
	return pot, ledger.Reaction{From: "SUCS", Into: []ledger.Part{{ID: "GLUS", Grams: 0.6}, {ID: "FRUS", Grams: 0.5}}, Water: 0.1}
}

func TestReactTakesWaterOutOfTheWholePot(t *testing.T) {
	pot, r := turning(t)
	sugar := pot.Of(1, "SUCS")[0]
	pot.React(r, column(21, 0.5))
	assert.InDelta(t, 0.5*sugar, pot.Of(1, "SUCS")[0], 1e-12)
	assert.InDelta(t, 0.3*sugar, pot.Of(1, "GLUS")[0], 1e-12)
	for _, m := range pot.Mass() {
		require.InDelta(t, 200, m, 1e-9)
	}
	assert.Less(t, ledgertest.Closed(pot), 1e-12)
}

func TestReactTurnsOnlyWhatTheWaterAllows(t *testing.T) {
	pot, r := turning(t)
	r.Into[0].Grams, r.Water = 1.5, 1 // 110 g of sugar would take 110 g of water
	pot.React(r, column(21, 1))
	for d, m := range pot.Mass() {
		require.InDelta(t, 200, m, 1e-9)
		require.InDelta(t, 0, pot.Total("WATER")[d], 1e-9)
		require.Positive(t, pot.Total("SUCS")[d])
	}
}

func TestReactMovesBounds(t *testing.T) {
	pot, _ := pots(t, 20)
	before, _ := pot.Bound("MALS")
	trehalose, rows := pot.Bound("TRES")
	require.NotEmpty(t, rows)
	pot.React(ledger.Reaction{From: "MALS", Into: []ledger.Part{{ID: "TRES", Grams: 1}}}, column(21, 0.25))
	after, _ := pot.Bound("MALS")
	made, _ := pot.Bound("TRES")
	assert.InDelta(t, 0.75*before, after, 1e-12)
	assert.InDelta(t, trehalose+0.25*before, made, 1e-12)
}

// What is unknown takes up water as it turns: of a gram of maltose that may be there come
// 1.05 g of glucose, so the totals above may hold that much more, known or not. A share of the
// pot turns, so a share of the growth comes; the mass itself has no bound to grow.
func TestBoundsGrowByTheWaterOfAReaction(t *testing.T) {
	pot, _ := pots(t, 20)
	order := func(id constituent.ID) int { return constituent.Must(id).Order }
	bounds := pot.Bounds(1)
	maltose, total, glucose := bounds[order("MALS")], 0.7, bounds[order("GLUS")]
	bounds[order("SUGAR")], bounds[order("CHOAVL")], bounds[order("MASS")] = total, 2*total, 3*total
	require.Positive(t, maltose)
	require.Positive(t, pot.Central("WATER"))
	most := func(id constituent.ID, total float64) float64 { // no more maltose than there is of what it is part of
		return min(maltose, pot.Of(1, id)[0]+total)
	}
	ofSugar, ofAll := most("SUGAR", total), most("CHOAVL", 2*total)
	hydrolysis := ledger.Reaction{From: "MALS", Into: []ledger.Part{{ID: "GLUS", Grams: 1.05}}, Water: 0.05}
	pot.React(hydrolysis, column(21, 0.4))
	assert.InDelta(t, 0.6*maltose, bounds[order("MALS")], 1e-12)
	assert.InDelta(t, glucose+0.4*maltose*1.05, bounds[order("GLUS")], 1e-12)
	assert.InDelta(t, total+ofSugar*0.4*0.05, bounds[order("SUGAR")], 1e-12)
	assert.InDelta(t, 2*total+ofAll*0.4*0.05, bounds[order("CHOAVL")], 1e-12)
	assert.Equal(t, 3*total, bounds[order("MASS")])

	known := pot.Bounds(1)
	known[order("SUGAR")], known[order("MALS")] = 0, 0.5
	pot.React(hydrolysis, column(21, 0.4))
	assert.InDelta(t, 0.5*0.4*0.05, known[order("SUGAR")], 1e-12, "a known total may take up water too")
	known[order("MALS")] = 0
	before := known[order("SUGAR")]
	pot.React(hydrolysis, column(21, 0.4))
	assert.Equal(t, before, known[order("SUGAR")], "where there can be none, nothing turns")
}

func TestForgetMakesARiderUnknown(t *testing.T) {
	pot, _ := pots(t, 20)
	had := pot.Of(0, "K")[0]
	require.Positive(t, had)
	pot.Forget(0, "K")
	assert.Zero(t, pot.Of(0, "K")[0])
	assert.InDelta(t, had, pot.Bounds(0)[constituent.Must("K").Order], 1e-12)
	assert.Panics(t, func() { pot.Forget(0, "SUCS") }, "mass cannot be forgotten")
}
