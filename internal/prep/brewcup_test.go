package prep_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/prep"
)

// What dissolves lies in the cup: 3.6 g of solids do not fit into one of 1 g, and where a
// hand's ± makes a cup smaller than its solids, there is no water in it and none is owed.
func TestSolidsFitTheirCup(t *testing.T) {
	_, err := prep.Brew(brewing(), prep.Recipe{Out: grams(1), Yield: grams(0.20)}, factors)
	require.ErrorContains(t, err, "1 g in the cup cannot hold 3.6 g of solids")

	out := grams(5)
	for d := 1; d < len(out); d += 2 {
		out[d] = 2.5
	}
	pot := brewing()
	_, err = prep.Brew(pot, prep.Recipe{Out: out, Yield: grams(0.20)}, factors)
	require.NoError(t, err)
	for d, water := range pot.Total(constituent.Water) {
		require.GreaterOrEqual(t, water, 0.0, "draw %d", d)
		assert.LessOrEqual(t, pot.Mass()[d], out[d]*(1+1e-9), "draw %d", d)
	}
}
