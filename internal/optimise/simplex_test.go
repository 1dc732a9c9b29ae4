package optimise_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"

	"sipsum/internal/optimise"
)

// An independent solver finds the same least cost, or that there is no point. Its own right sides
// are of no round figures, since it may go round in circles where corners meet.
func TestTheSimplexAgreesWithAnother(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	none := 0
	for range 500 {
		n, m := 2+r.IntN(8), 1+r.IntN(6)
		cost, rows, right := make([]float64, n+m), make([][]float64, m), make([]float64, m)
		for i := range n {
			cost[i] = r.Float64()
		}
		a := mat.NewDense(m, n+m, nil)
		for k := range rows {
			rows[k] = make([]float64, n+m)
			for i := range n {
				rows[k][i] = r.NormFloat64()
			}
			rows[k][n+k] = 1
			right[k] = 3 * r.NormFloat64()
			a.SetRow(k, rows[k])
		}
		want, _, wantErr := lp.Simplex(cost, a, right, 1e-10, nil)
		x, got, err := optimise.Minimise(cost, rows, right, endless(len(cost)))
		if errors.Is(wantErr, lp.ErrInfeasible) {
			none++
			assert.ErrorIs(t, err, optimise.ErrNone)
			continue
		}
		require.NoError(t, wantErr)
		require.NoError(t, err)
		assert.InDelta(t, want, got, 1e-6)
		for k := range rows {
			sum := 0.0
			for i := range x {
				assert.GreaterOrEqual(t, x[i], 0.0)
				sum += rows[k][i] * x[i]
			}
			assert.InDelta(t, right[k], sum, 1e-7)
		}
	}
	assert.Greater(t, none, 20, "some have no point")
}

// The program of Beale (1955, Nav. Res. Logist. Q. 2:269), round whose corner the rule of the
// steepest price goes in circles: the least is −1/20.
func TestTheSimplexComesToAnEndWhereCornersMeet(t *testing.T) {
	x, value, err := optimise.Minimise(
		[]float64{-3.0 / 4, 150, -1.0 / 50, 6, 0, 0, 0},
		[][]float64{
			{1.0 / 4, -60, -1.0 / 25, 9, 1, 0, 0},
			{1.0 / 2, -90, -1.0 / 50, 3, 0, 1, 0},
			{0, 0, 1, 0, 0, 0, 1},
		},
		[]float64{0, 0, 1}, endless(7))
	require.NoError(t, err)
	assert.InDelta(t, -1.0/20, value, 1e-12)
	assert.InDelta(t, 1, x[2], 1e-9)
}

// endless is no end of any variable.
func endless(n int) []float64 {
	most := make([]float64, n)
	for i := range most {
		most[i] = math.Inf(1)
	}
	return most
}

// Ends that need no row give what they give as rows, by an independent solver.
func TestEndsOfVariablesAreKeptAsRowsWould(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	none, full := 0, 0
	for range 500 {
		n, m := 2+r.IntN(8), 1+r.IntN(4)
		cost, rows, right, most := make([]float64, n+m), make([][]float64, m), make([]float64, m), endless(n+m)
		all := m + n
		allCost, a, allRight := make([]float64, n+all), mat.NewDense(all, n+all, nil), make([]float64, all)
		for i := range n {
			cost[i] = r.NormFloat64()
			most[i] = float64(r.IntN(4)) / 2
			allCost[i] = cost[i]
			a.Set(m+i, i, 1)
			a.Set(m+i, n+m+i, 1)
			allRight[m+i] = most[i] + 1e-9*r.Float64()
		}
		for k := range rows {
			rows[k] = make([]float64, n+m)
			for i := range n {
				rows[k][i] = r.NormFloat64()
				a.Set(k, i, rows[k][i])
			}
			rows[k][n+k] = 1
			a.Set(k, n+k, 1)
			right[k] = r.NormFloat64()
			allRight[k] = right[k]
		}
		want, _, wantErr := lp.Simplex(allCost, a, allRight, 1e-10, nil)
		x, got, err := optimise.Minimise(cost, rows, right, most)
		if errors.Is(wantErr, lp.ErrInfeasible) {
			none++
			assert.ErrorIs(t, err, optimise.ErrNone)
			continue
		}
		require.NoError(t, wantErr)
		require.NoError(t, err)
		assert.InDelta(t, want, got, 1e-6)
		for i := range n {
			assert.GreaterOrEqual(t, x[i], 0.0)
			assert.LessOrEqual(t, x[i], most[i]+1e-9)
			if most[i] > 0 && x[i] > most[i]-1e-9 {
				full++
			}
		}
	}
	assert.Greater(t, none, 20, "some have no point")
	assert.Greater(t, full, 100, "many stand at their most")
}
