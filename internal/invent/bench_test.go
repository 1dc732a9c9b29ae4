package invent

import (
	"context"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
)

// The demand of a brief that only three foods meet, of all foods of the core table.
func BenchmarkThreeFoodsOfTheCoreTable(b *testing.B) {
	core := assaytest.Core(b)
	k := kitchenOf(b, core, `
drink: cold orchard
serves: 2
scale: 0.1 g
build: [72 g core:espresso, 20 g core:water-tap]
targets: [serving(SUGAR) between 6 g and 8 g, ta() between 4 g/l and 6 g/l, "ratio(MALAC, CITAC) >= 3", volume() <= 110 ml]
`)
	for b.Loop() {
		res, err := Find(context.Background(), k, all(core), Filter{})
		require.NoError(b, err)
		require.NotEmpty(b, res.Designs)
	}
}

// The arithmetic of two thousand foods, each in ten amounts, of which none and few pairs do.
func BenchmarkTwoThousandFoods(b *testing.B) {
	for b.Loop() {
		p := randomPool(rand.New(rand.NewPCG(1, 2)), 2000, 10, 25)
		p.together = 240
		for size := 1; size <= largest; size++ {
			list, _, err := p.answers(size)
			require.NoError(b, err)
			b.Logf("%d foods: %d families", size, len(list))
		}
	}
}
