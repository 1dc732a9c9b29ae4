package ledger_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/ledger/ledgertest"
)

// profile makes a food of invented round figures per 100 g; the tests are of
// arithmetic, not of foods.
func profile(code string, values map[constituent.ID]float64) *food.Profile {
	f := &food.Food{ID: food.ID{Table: "own", Code: code}, Edible: food.None}
	for _, c := range constituent.All() {
		if amount, ok := values[c.ID]; ok {
			f.Values = append(f.Values, food.Value{
				Constituent: c.ID, Amount: amount, SD: 0.1 * amount, N: 20, Low: food.None, High: food.None, Limit: food.None, State: estimate.Measured,
			})
		}
	}
	return food.Enter(f, nil)
}

func column(n int, x float64) []float64 {
	col := make([]float64, n)
	for i := range col {
		col[i] = x
	}
	return col
}

func pots(t *testing.T, draws int) (*ledger.Pot, []*food.Profile) {
	t.Helper()
	profiles := []*food.Profile{
		profile("juice", map[constituent.ID]float64{"WATER": 88, "SUCS": 5, "GLUS": 3, "CITAC": 1000, "FIBTG": 0.5, "K": 150, "CHOCDF": 11}),
		profile("cream", map[constituent.ID]float64{"WATER": 60, "FAT": 35, "FASAT": 20, "PROCNT": 2, "LACS": 3, "CHOLE": 100}),
	}
	columns := ledger.NewColumns(profiles)
	pot := ledger.New(columns, draws+1)
	drawer := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: draws + 1}, columns)
	for i, p := range profiles {
		pot.Pour(p, drawer.PerGram(p), column(draws+1, float64(50*(i+1))), p.Food.ID.String())
	}
	return pot, profiles
}

func TestEveryDrawWeighsWhatWasPoured(t *testing.T) {
	pot, _ := pots(t, 200)
	for _, m := range pot.Mass() {
		require.InDelta(t, 150, m, 1e-9)
	}
	assert.Less(t, ledgertest.Closed(pot), 1e-12)
}

// random keeps a random share of each constituent.
type random struct{ r *rand.Rand }

func (m random) Share(_ ledger.Row, _ *constituent.Constituent, share []float64) {
	for d := range share {
		share[d] = m.r.Float64()
	}
}

func TestParentsEqualPartsAfterAnySequence(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	pot, profiles := pots(t, 20)
	drawer := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: 21}, pot.Columns)
	for range 300 {
		before := pot.Mass()[0]
		switch r.IntN(3) {
		case 0:
			lost := pot.Apply(random{r})
			assert.InDelta(t, before, pot.Mass()[0]+lost.Mass(), 1e-9*math.Max(before, 1))
		case 1:
			p := profiles[r.IntN(len(profiles))]
			pot.Pour(p, drawer.PerGram(p), column(21, 10*r.Float64()), "more")
			if len(pot.Rows) > 40 {
				pot, _ = pots(t, 20)
			}
		case 2:
			pot.Scale(column(21, 0.5+r.Float64()))
		}
		require.Less(t, ledgertest.Closed(pot), 1e-9)
		total := pot.Total("SUCS")
		for row := range pot.Rows {
			for d, x := range pot.Of(row, "SUCS") {
				total[d] -= x
			}
		}
		for _, left := range total {
			require.InDelta(t, 0, left, 1e-9, "contributions sum to the total in every draw")
		}
	}
}

func TestSolidsAndWaterOfAJuiceAreAnticorrelated(t *testing.T) {
	pot, _ := pots(t, 2000)
	assert.Less(t, stat.Correlation(pot.Of(0, "SUCS")[1:], pot.Of(0, "WATER")[1:], nil), -0.3)
}

func TestBoundsTravelWithTheirConstituent(t *testing.T) {
	pot, _ := pots(t, 20)
	before, rows := pot.Bound("MALAC")
	require.Equal(t, []int{0, 1}, rows)
	require.Positive(t, before)
	half := column(21, 0.5)
	pot.Scale(half)
	scaled, _ := pot.Bound("MALAC")
	assert.InDelta(t, before/2, scaled, 1e-12)
}

func TestMixKeepsThePath(t *testing.T) {
	inner, _ := pots(t, 20)
	outer := ledger.New(inner.Columns, 21)
	outer.Mix(inner, column(21, 0.1), "syrup")
	assert.Equal(t, []string{"syrup"}, outer.Rows[0].Path)
	assert.InDelta(t, 15, outer.Mass()[0], 1e-9)
	assert.Empty(t, inner.Rows[0].Path)
}

func TestStateIsTheWorstOfTheWeightyParts(t *testing.T) {
	pot, _ := pots(t, 20)
	assert.Equal(t, estimate.Measured, pot.State("SUCS"))
	pot.Apply(keepAll{})
	assert.Equal(t, estimate.Calculated, pot.State("SUCS"), "a model has touched it")
	assert.Equal(t, estimate.Unknown, pot.State("MALAC"))
}

type keepAll struct{}

func (keepAll) Share(_ ledger.Row, _ *constituent.Constituent, share []float64) {
	for d := range share {
		share[d] = 1
	}
}
