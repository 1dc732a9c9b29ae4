package fit

import (
	"context"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
)

const kite = `
drink: kite
serves: 1
scale: 1 g
at: 5 °C
build: [60 g core:cold-brew, 12 g core:sugar-white, 30 g core:grapefruit-juice-pink, 60 g core:water-sparkling-low]
`

// Every amount on the steps of the scale is poured: none moves what is held less, by more than nobody can tell.
func TestNoOtherAmountMovesWhatIsHeldLess(t *testing.T) {
	lib := assaytest.Core(t)
	bench := func(r *recipe.Recipe) Bench {
		one := assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1})
		return Bench{Central: one, Drawn: one, Drink: r.Drink, Declared: func(string) (bool, error) { return false, nil }}
	}
	ctx, r := context.Background(), assaytest.Found(t, lib, kite)
	s := &swap{Exchanged: &Exchanged{Exchange: Exchange{Food: "core:water-sparkling-low"}}, recipe: r,
		kitchen: func(ctx context.Context, d *drink.Drink) (Bench, *recipe.Recipe, error) {
			found, err := recipe.Find(ctx, d, &fail.List{}, lib)
			if err != nil {
				return Bench{}, nil, err
			}
			return bench(found), found, nil
		}}
	require.NoError(t, s.find())
	var err error
	s.bench, err = s.asItIs(ctx)
	require.NoError(t, err)
	require.NoError(t, s.weigh(ctx))
	var pool []*food.Food
	for id, f := range lib {
		if slices.Contains([]string{"ginger-ale", "root-beer", "tonic-water", "soda-water"}, id.Code) {
			pool = append(pool, f)
		}
	}
	list := s.near(pool)
	require.NotEmpty(t, list)
	for _, n := range list {
		found, err := s.try(ctx, n)
		require.NoError(t, err)
		require.NotNil(t, found, n.food.ID.Code)
		best := math.Inf(1)
		for i := 1; i <= int(4*60/found.step); i++ {
			far, err := found.at(ctx, s, point{i, 0})
			require.NoError(t, err)
			best = min(best, far)
		}
		assert.LessOrEqual(t, found.far, best+0.05, "%s at %g g", n.food.ID.Code, found.pours[0].To.Number)
	}
}

// What nobody knows of a figure moves it no further than to what nobody can tell: so the known end decides.
func TestWhatIsUnknownMovesNothingFar(t *testing.T) {
	x := Trait{Least: 0.8, Most: 1.2, low: 10, high: 10}
	assert.InDelta(t, 1.9, x.off(10, 30), 1e-9, "may be as it was, or three times as much")
	assert.InDelta(t, 2, x.off(14, 30), 1e-9, "surely two fifths more")
	assert.InDelta(t, 1.9, x.off(5, 30), 1e-9, "may be as it was")
	assert.InDelta(t, 0.5, x.off(11, 11), 1e-9)
}
