package optimise_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/optimise"
)

// problem is a random problem on a small grid, whose every point can be asked.
type problem struct {
	optimise.Problem
	bends bool
}

// figures of a problem are whole numbers of quarters, so that ties and points that lie exactly on
// a limit are frequent, and exact.
func randomProblem(r *rand.Rand, bends bool) problem {
	n := 2 + r.IntN(7)
	p := problem{bends: bends}
	width := max(2, int(math.Pow(20000, 1/float64(n))))
	for range n {
		from := float64(r.IntN(8))
		p.Variables = append(p.Variables, optimise.Variable{From: from, To: from + float64(1+r.IntN(width)), Step: 1, Start: from + float64(r.IntN(width))})
	}
	quarter := func(most int) float64 { return float64(r.IntN(2*most+1)-most) / 4 }
	m := 1 + r.IntN(5)
	slopes, is := make([][]float64, m), make([]float64, m)
	for k := range slopes {
		slopes[k] = make([]float64, n)
		at := 0.0
		for i, v := range p.Variables {
			slopes[k][i] = quarter(8)
			at += slopes[k][i] * math.Round(v.From+r.Float64()*(v.To-v.From))
		}
		is[k] = -at + quarter(4) // met near some point of its own
		if r.IntN(4) == 0 && k > 0 {
			for i := range slopes[k] { // a band: the contrary of the one before
				slopes[k][i] = -slopes[k-1][i]
			}
			is[k] = -is[k-1] + float64(r.IntN(3))/2 - 0.25*float64(r.IntN(2))
		}
	}
	p.Scales = scales(m)
	goal := make([]float64, n)
	aims := r.IntN(2) == 0
	for i := range goal {
		goal[i] = quarter(4)
	}
	curve := quarter(8) / 16
	p.Eval = func(_ context.Context, x []float64) (optimise.Point, error) {
		pt := optimise.Point{Goal: math.NaN()}
		for k := range slopes {
			v := is[k]
			for i := range x {
				v += slopes[k][i] * x[i]
			}
			if bends && k == 0 {
				v += curve * x[0] * x[1]
			}
			pt.Margins = append(pt.Margins, v)
		}
		if aims {
			pt.Goal = 0
			for i := range x {
				pt.Goal += goal[i] * x[i]
			}
		}
		return pt, nil
	}
	return p
}

// change is the change as the package's text defines it.
func (p problem) change(x []float64) float64 {
	sum := 0.0
	for i, v := range p.Variables {
		start := min(max(math.Round(v.Start), v.From), v.To)
		sum += math.Abs(x[i]-start) / max(start, 1)
	}
	return sum
}

// each asks every point of the grid.
func (p problem) each(do func(x []float64, pt optimise.Point)) {
	x := make([]float64, len(p.Variables))
	for i, v := range p.Variables {
		x[i] = v.From
	}
	for {
		pt, _ := p.Eval(context.Background(), x)
		do(x, pt)
		i := 0
		for ; i < len(x); i++ {
			if x[i]++; x[i] <= p.Variables[i].To {
				break
			}
			x[i] = p.Variables[i].From
		}
		if i == len(x) {
			return
		}
	}
}

func met(pt optimise.Point, but int) bool {
	for k, m := range pt.Margins {
		if k != but && m < 0 {
			return false
		}
	}
	return true
}

// best is the best point by asking all.
func (p problem) best() (goal, change float64, any bool) {
	goal, change = math.Inf(1), math.Inf(1)
	p.each(func(x []float64, pt optimise.Point) {
		if !met(pt, -1) {
			return
		}
		g, c := pt.Goal, p.change(x)
		if math.IsNaN(g) {
			g = 0
		}
		if g < goal-1e-12 || g < goal+1e-12 && c < change {
			goal, change = g, c
		}
		any = true
	})
	return goal, change, any
}

const problems = 200

func TestLinearProblemsAreSolvedAsByAskingEveryPoint(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	none := 0
	for n := range problems {
		p := randomProblem(r, false)
		goal, change, any := p.best()
		found, err := optimise.Solve(context.Background(), p.Problem)
		require.NoError(t, err)
		what := fmt.Sprintf("problem %d of %d amounts", n, len(p.Variables))
		require.Equal(t, any, found.Met, what)
		require.True(t, found.Proven, what)
		for i, v := range p.Variables {
			require.True(t, found.At[i] >= v.From && found.At[i] <= v.To && found.At[i] == math.Round(found.At[i]), what)
		}
		if !any {
			none++
			require.True(t, found.None, what)
			p.fewest(t, found, what)
			p.conflict(t, found, what)
			continue
		}
		if !math.IsNaN(found.Point.Goal) {
			require.InDelta(t, goal, found.Point.Goal, 1e-9, what)
		}
		require.InDelta(t, change, p.change(found.At), 1e-9, what)
	}
	assert.Greater(t, none, problems/10, "problems without a point")
	assert.Less(t, none, problems*3/4)
}

// scales are in what misses of a problem are counted: the halves are exact.
func scales(n int) []float64 {
	list := make([]float64, n)
	for k := range list {
		list[k] = 0.5 * float64(1+k)
	}
	return list
}

// worth is how many targets a point misses, by how much, its goal and its change.
func (p problem) worth(x []float64, pt optimise.Point) [4]float64 {
	w := [4]float64{3: p.change(x)}
	for k, m := range pt.Margins {
		if m < 0 {
			w[0]++
			w[1] -= m / p.Scales[k]
		}
	}
	if !math.IsNaN(pt.Goal) {
		w[2] = pt.Goal
	}
	return w
}

func less(a, b [4]float64) bool {
	for i := range a {
		if math.Abs(a[i]-b[i]) > 1e-9 {
			return a[i] < b[i]
		}
	}
	return false
}

// fewest holds a point that does not meet all to every point: none misses fewer targets, or as many by
// less than a hundredth less; and of those that miss as little none has less of the goal, or a smaller
// change.
func (p problem) fewest(t *testing.T, found optimise.Solution, what string) {
	t.Helper()
	least := [4]float64{math.Inf(1)}
	p.each(func(x []float64, pt optimise.Point) {
		if w := p.worth(x, pt); less([4]float64{w[0], w[1]}, [4]float64{least[0], least[1]}) {
			least = w
		}
	})
	best := [4]float64{2: math.Inf(1)}
	p.each(func(x []float64, pt optimise.Point) {
		w := p.worth(x, pt)
		if w[0] > least[0] || w[1] > 1.01*least[1]+1e-9 {
			return
		}
		if less([4]float64{2: w[2], 3: w[3]}, [4]float64{2: best[2], 3: best[3]}) {
			best = w
		}
	})
	got := p.worth(found.At, found.Point)
	require.InDelta(t, least[0], got[0], 0, what)
	require.LessOrEqual(t, got[1], 1.01*least[1]+1e-9, what)
	require.InDelta(t, best[2], got[2], 1e-9, "%s: %v, not %v", what, got, best)
	require.InDelta(t, best[3], got[3], 1e-9, "%s: %v, not %v", what, got, best)
}

// conflict holds what is told of a problem without a point to every point.
func (p problem) conflict(t *testing.T, found optimise.Solution, what string) {
	t.Helper()
	require.NotNil(t, found.Conflict, what)
	between := found.Conflict.Between
	together := func(list []int) bool {
		any := false
		p.each(func(_ []float64, pt optimise.Point) {
			ok := true
			for _, k := range list {
				ok = ok && pt.Margins[k] >= 0
			}
			any = any || ok
		})
		return any
	}
	require.False(t, together(between), what)
	for i, k := range between {
		require.True(t, together(append(append([]int(nil), between[:i]...), between[i+1:]...)), what+": one too many")
		least := math.NaN()
		p.each(func(_ []float64, pt optimise.Point) {
			if met(pt, k) && !(-pt.Margins[k] >= least) {
				least = -pt.Margins[k]
			}
		})
		if math.IsNaN(least) {
			require.True(t, math.IsNaN(found.Conflict.Gives[i]), what)
			continue
		}
		require.InEpsilon(t, least, found.Conflict.Gives[i], 0.01, what)
	}
}

// noBetter holds what a target can come to beside the nearest point: a point that meets all the
// others and misses it by less would be a better answer.
func noBetter(t *testing.T, found optimise.Solution) {
	t.Helper()
	for i, k := range found.Conflict.Between {
		if met(found.Point, k) {
			require.LessOrEqual(t, found.Conflict.Gives[i], -found.Point.Margins[k])
		}
	}
}

func TestProblemsThatBendAreMetWhereTheyCanBe(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	can, met, best, proven := 0, 0, 0, 0
	for range problems / 2 {
		p := randomProblem(r, true)
		goal, change, any := p.best()
		found, err := optimise.Solve(context.Background(), p.Problem)
		require.NoError(t, err)
		if !any {
			require.False(t, found.Met)
			noBetter(t, found)
			continue
		}
		can++
		if found.Met {
			met++
			g := found.Point.Goal
			if math.IsNaN(g) {
				g = 0
			}
			if g <= goal+1e-9 && p.change(found.At) <= change+1e-9 {
				best++
			}
		}
		if found.Proven {
			proven++
			require.InDelta(t, change, p.change(found.At), 1e-9)
		}
	}
	t.Logf("%d have a point: met %d, best %d, proven %d", can, met, best, proven)
	assert.Equal(t, can, met)
	assert.GreaterOrEqual(t, best, can*8/10)
}

func BenchmarkSolve(b *testing.B) {
	r := rand.New(rand.NewPCG(7, 11))
	var list []problem
	for range problems {
		list = append(list, randomProblem(r, false))
	}
	for b.Loop() {
		for _, p := range list {
			if _, err := optimise.Solve(context.Background(), p.Problem); err != nil {
				b.Fatal(err)
			}
		}
	}
}
