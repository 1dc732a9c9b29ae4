package optimise_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/optimise"
)

// blend is a drink of syrups of known strengths: a share of sugar and a mass are asked of it, and each
// may be half or twice of its 10 g.
func blend(strengths []float64, share, mass [2]float64) optimise.Problem {
	p := optimise.Problem{Eval: func(_ context.Context, x []float64) (optimise.Point, error) {
		sugar, all := 0.0, 0.0
		for i, g := range x {
			sugar += strengths[i] * g
			all += g
		}
		of := sugar / all
		return optimise.Point{Goal: math.NaN(), Margins: []float64{of - share[0], share[1] - of, all - mass[0], mass[1] - all}, Sizes: []float64{all}}, nil
	}}
	for range strengths {
		p.Variables = append(p.Variables, optimise.Variable{From: 5, To: 20, Step: 0.1, Start: 10})
	}
	return p
}

// A hundred syrups of 0 to 89 % to 30 % and 700 g: the least movement between the steps is that of a
// linear programme, 300 g less in all and the rest traded between weak and strong; by hand 459.5 g on
// the steps. A share is a line once it is multiplied by the mass, so that a run for each amount is enough.
func TestAHundredAmountsMoveTheLeast(t *testing.T) {
	strengths := make([]float64, 100)
	for i := range strengths {
		strengths[i] = float64(i%90) / 100
	}
	p := blend(strengths, [2]float64{0.30, 0.301}, [2]float64{700, 701})
	found, err := optimise.Solve(context.Background(), p)
	require.NoError(t, err)
	require.True(t, found.Met)
	assert.Less(t, found.Runs, 150)
	moved := 0.0
	for _, x := range found.At {
		moved += math.Abs(x - 10)
	}
	assert.LessOrEqual(t, moved, 459.5)
}

// What a drink is like that cannot be does not hang on how it was written: of thirty syrups, from
// any amounts, the same targets are missed, by the same.
func TestTheNearestDoesNotHangOnTheStart(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for _, limits := range [][2][2]float64{{{0.5, 0.6}, {100, 120}}, {{0.7, 0.8}, {300, 310}}} {
		strengths := []float64{0.1, 0.2, 0.3, 0.4}
		p := blend(strengths, limits[0], limits[1])
		p.Scales = []float64{0.5, 0.6, 100, 120}
		var want optimise.Solution
		for n := range 12 {
			for i := range p.Variables {
				p.Variables[i].Start = 5 + 15*r.Float64()
			}
			found, err := optimise.Solve(context.Background(), p)
			require.NoError(t, err)
			require.False(t, found.Met)
			if n == 0 {
				want = found
				continue
			}
			sum := func(pt optimise.Point) (all float64) {
				for k, m := range pt.Margins {
					all += max(0, -m) / p.Scales[k]
				}
				return all
			}
			for k, m := range found.Point.Margins {
				assert.Equal(t, want.Point.Margins[k] >= 0, m >= 0, "target %d", k)
			}
			assert.InEpsilon(t, sum(want.Point), sum(found.Point), 0.0101)
		}
	}
}

// A walk is allowed so many points, and ends.
func TestASearchEndsWithItsPoints(t *testing.T) {
	const n = 60
	p := optimise.Problem{Most: 300, Eval: func(_ context.Context, x []float64) (optimise.Point, error) {
		a, b := 0.0, 0.0
		for i, v := range x {
			a += math.Sin(v * float64(i+1) / 7)
			b += v * v
		}
		return optimise.Point{Goal: b, Margins: []float64{a - 55, 20 - a}}, nil
	}}
	for range n {
		p.Variables = append(p.Variables, optimise.Variable{From: 0, To: 20, Step: 0.1, Start: 3})
	}
	found, err := optimise.Solve(context.Background(), p)
	require.NoError(t, err)
	assert.LessOrEqual(t, found.Runs, 300+100+100+5, "the search, that for fewest misses, and that for what is in the way")
}

// Beside a point of least movement, which only just meets a band, stands one in its middle; and what is
// said to be surer is: of every point within the room none has a greater product of chances by more than
// its movement is worth.
func TestASurerPointIsTheSurestWithinItsRoom(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	chance := func(margins, spreads []float64) float64 {
		sum := 0.0
		for k, m := range margins {
			sum += math.Log(math.Erfc(-m/spreads[k]/math.Sqrt2) / 2)
		}
		return sum
	}
	better := 0
	for range 60 {
		p := randomProblem(r, false)
		p.Eval = noGoal(p.Eval)
		found, err := optimise.Solve(context.Background(), p.Problem)
		require.NoError(t, err)
		if !found.Met || p.change(found.At) == 0 {
			continue
		}
		spreads := make([]float64, len(found.Point.Margins))
		for k := range spreads {
			spreads[k] = 0.5 + 3*r.Float64()
		}
		room := optimise.Room{Share: 0.3, Least: 0.2}
		most := p.change(found.At) + max(room.Share*p.change(found.At), room.Least)
		at, err := optimise.Surer(context.Background(), p.Problem, found.At, spreads, room)
		require.NoError(t, err)
		pt, _ := p.Eval(context.Background(), at)
		require.True(t, met(pt, -1))
		require.LessOrEqual(t, p.change(at), most+1e-6)
		best := math.Inf(-1)
		p.each(func(x []float64, pt optimise.Point) {
			if met(pt, -1) && p.change(x) <= most+1e-9 {
				best = max(best, chance(pt.Margins, spreads))
			}
		})
		got := chance(pt.Margins, spreads)
		require.GreaterOrEqual(t, got, best-0.05*float64(len(spreads)), "the tangents are no more than so far from the curve")
		if got > chance(found.Point.Margins, spreads)+1e-9 {
			better++
		}
	}
	assert.Greater(t, better, 8)
}

func noGoal(eval func(context.Context, []float64) (optimise.Point, error)) func(context.Context, []float64) (optimise.Point, error) {
	return func(ctx context.Context, x []float64) (optimise.Point, error) {
		pt, err := eval(ctx, x)
		pt.Goal = math.NaN()
		return pt, err
	}
}
