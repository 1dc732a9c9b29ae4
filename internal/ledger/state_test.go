package ledger_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// poured makes a pot of 100 g of one food.
func poured(f *food.Food) (*ledger.Pot, *food.Profile) {
	p := food.Enter(f, nil)
	columns := ledger.NewColumns([]*food.Profile{p})
	pot := ledger.New(columns, 21)
	pot.Pour(p, ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: 21}, columns).PerGram(p), column(21, 100), "line")
	return pot, p
}

// A total that nobody has published is known as its parts are: as the worst of those that
// make up at least a twentieth of it.
func TestStateOfATotalWithoutAFigureIsThatOfItsParts(t *testing.T) {
	for _, c := range []struct {
		glucose, fructose, lactose float64
		fructoseIs                 estimate.State
		want                       estimate.State
	}{
		{5, 4, 0.1, estimate.Measured, estimate.Measured},
		{5, 4, 0.1, estimate.Calculated, estimate.Calculated},
		{5, 0.2, 4, estimate.Calculated, estimate.Measured},
	} {
		f := profile("x", map[constituent.ID]float64{"WATER": 90, "GLUS": c.glucose, "FRUS": c.fructose, "LACS": c.lactose}).Food
		for i := range f.Values {
			if f.Values[i].Constituent == "FRUS" {
				f.Values[i].State = c.fructoseIs
			}
		}
		pot, p := poured(f)
		require.False(t, p.Cell("SUGAR").Known, "nobody has published it")
		assert.Equal(t, c.want, pot.State("SUGAR"), "%v", c)
	}
}

// Added sugars are drawn with the sugars only where the food says which share of them was
// added: a published figure of its own stands, and where none is added nothing is carried.
func TestAddedSugarIsAPublishedFigureOrAShare(t *testing.T) {
	f := profile("x", map[constituent.ID]float64{"WATER": 90, "SUGAR": 8, "SUGAD": 5}).Food
	pot, p := poured(f)
	require.True(t, math.IsNaN(p.AddedShare))
	assert.InDelta(t, 5, pot.Of(0, "SUGAD")[0], 1e-9)

	f = profile("y", map[constituent.ID]float64{"WATER": 90, "SUGAR": 8}).Food
	f.Marks = []food.Mark{{Kind: "added sugar", Share: 0}}
	pot, _ = poured(f)
	assert.Equal(t, -1, pot.Columns.At("SUGAD"))

	f.Marks[0].Share = 0.25
	pot, _ = poured(f)
	sugar := pot.Of(0, "SUGAR")
	for d, added := range pot.Of(0, "SUGAD") {
		assert.InDelta(t, 0.25*sugar[d], added, 1e-12, "draw by draw")
	}
}

// The state of a drink's sugar is the worst of the foods that bring a twentieth of it or
// more; where there is none, the best of what is said.
func TestStateOverFoodsIsTheWorstOfTheWeighty(t *testing.T) {
	sugar := func(code string, grams float64, is estimate.State) *food.Profile {
		f := profile(code, map[constituent.ID]float64{"WATER": 100 - grams, "SUCS": grams}).Food
		for i := range f.Values {
			f.Values[i].State = is
		}
		return food.Enter(f, nil)
	}
	state := func(profiles ...*food.Profile) estimate.State {
		columns := ledger.NewColumns(profiles)
		pot := ledger.New(columns, 11)
		for _, p := range profiles {
			pot.Pour(p, ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: 11}, columns).PerGram(p), column(11, 100), p.Food.ID.String())
		}
		return pot.State("SUCS")
	}
	measured := sugar("measured", 50, estimate.Measured)
	assert.Equal(t, estimate.Calculated, state(measured, sugar("more", 5, estimate.Calculated)))
	assert.Equal(t, estimate.Measured, state(measured, sugar("little", 2, estimate.Calculated)))
	assert.Equal(t, estimate.Measured, state(sugar("silent", 0, estimate.Unknown), sugar("none", 0, estimate.Measured)))
	assert.Equal(t, estimate.Unknown, state(sugar("silent", 0, estimate.Unknown)))
}

// What a step makes of a food that is not known to have it is calculated, however little
// there is of it.
func TestWhatAStepMadeIsCalculated(t *testing.T) {
	pot, r := turning(t)
	require.Equal(t, estimate.Unknown, pot.State("GLUS"))
	pot.React(r, column(21, 0.001))
	require.Less(t, pot.Total("GLUS")[0], 1.0)
	assert.Equal(t, estimate.Calculated, pot.State("GLUS"))
}

// Only the foods of which nobody knows are named as unknown: the cream has its lactose
// stated, the juice is silent.
func TestOnlyTheUnknownRowsAreNamed(t *testing.T) {
	pot, _ := pots(t, 20)
	bound, rows := pot.Bound("LACS")
	assert.Equal(t, []int{0}, rows)
	assert.Equal(t, pot.Bounds(0)[constituent.Must("LACS").Order], bound)
}
