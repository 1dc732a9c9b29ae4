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
