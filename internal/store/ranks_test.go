package store

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ranks that waited in a file come out as those that waited in memory.
func TestSpilledRanksComeInOrder(t *testing.T) {
	for _, every := range []int{0, 1, 7, 1000} {
		random := rand.New(rand.NewPCG(3, uint64(every)))
		var r ranks
		t.Cleanup(r.close)
		var all []pair
		for i := range 1000 {
			p := pair{random.Int64N(4), float64(random.IntN(30)) / 7, int64(i)}
			all = append(all, p)
			require.NoError(t, r.add(p))
			if every > 0 && i%every == 0 {
				require.NoError(t, r.spill())
			}
		}
		slices.SortFunc(all, func(a, b pair) int {
			return cmp.Or(cmp.Compare(a.stratum, b.stratum), -cmp.Compare(a.amount, b.amount), cmp.Compare(a.food, b.food))
		})
		var got []pair
		require.NoError(t, r.each(func(p pair) error {
			got = append(got, p)
			return nil
		}))
		assert.Equal(t, all, got, "spilled every %d", every)
	}
}
