package acid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
)

// A spectrum that was titrated upwards is asked for a pH a little below where it began:
// with acid added it stays near the liquid that it was read from. The limit is what
// data/acid_unmeasured.csv says of "beyond titration".
func TestSpectrumHoldsALittleBeyondItsTitration(t *testing.T) {
	const beyond, within, points = 0.3, 0.1, 12
	for name, sol := range liquids(t) {
		s := solver(t, 20)
		full, err := s.Base(sol, 8.5, acid.State{})
		require.NoError(t, err)
		bench := titrate(t, sol, 20, full*sol.Solvent/(points-1), points)
		bench.Background = sol.Background / sol.Solvent
		fit, err := acid.Fit(bench)
		require.NoError(t, err, name)

		own, err := s.Solve(sol, acid.State{})
		require.NoError(t, err)
		base, err := s.Base(sol, own.PH-beyond, own)
		require.NoError(t, err)
		soured := fit.Solution(sol.Solvent)
		soured.Strong += base * sol.Solvent
		got, err := s.Solve(soured, own)
		require.NoError(t, err)
		assert.InDelta(t, own.PH-beyond, got.PH, within, name)
		t.Logf("%s: %.3f at %.3f", name, got.PH, own.PH-beyond)
	}
}
