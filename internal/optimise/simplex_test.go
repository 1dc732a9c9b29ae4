package optimise_test

import (
	"errors"
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
		x, got, err := optimise.Minimise(cost, rows, right)
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
		[]float64{0, 0, 1})
	require.NoError(t, err)
	assert.InDelta(t, -1.0/20, value, 1e-12)
	assert.InDelta(t, 1, x[2], 1e-9)
}
