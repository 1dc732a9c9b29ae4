package claim_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/claim"
)

// levers draws four inputs of which the first two go together.
func levers() []claim.Lever {
	rng := rand.New(rand.NewPCG(1, 2))
	const n = 2000
	cols := [4][]float64{{10}, {4}, {1}, {50}}
	for range n {
		z := [4]float64{rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()}
		cols[0] = append(cols[0], 10+z[0])
		cols[1] = append(cols[1], 4+0.5*(0.8*z[0]+0.6*z[1]))
		cols[2] = append(cols[2], 1+0.1*z[2])
		cols[3] = append(cols[3], 50+5*z[3])
	}
	list := make([]claim.Lever, len(cols))
	for i := range cols {
		list[i] = claim.Lever{Column: cols[i], Low: math.Inf(-1), High: math.Inf(1)}
	}
	return list
}

func covariance(list []claim.Lever) *mat.SymDense {
	draws := mat.NewDense(len(list[0].Column)-1, len(list), nil)
	for i, l := range list {
		for d, x := range l.Column[1:] {
			draws.Set(d, i, x)
		}
	}
	cov := mat.NewSymDense(len(list), nil)
	stat.CovarianceMatrix(cov, draws, nil)
	return cov
}

// One input of standard deviation s at a margin g₀ = x − limit is broken at the limit, at the
// distance (x − limit)/s; of two that are independent and count alike, the one with twice the
// variance moves twice as far. Both by hand.
func TestLinearByHand(t *testing.T) {
	w := claim.Linear([]float64{10}, mat.NewSymDense(1, []float64{4}), 10-7, []float64{1})
	assert.InDelta(t, 7, w.At[0], 1e-12)
	assert.InDelta(t, 1.5, w.Distance, 1e-12)
	w = claim.Linear([]float64{5, 5}, mat.NewSymDense(2, []float64{2, 0, 0, 1}), 3, []float64{1, 1})
	assert.InDeltaSlice(t, []float64{3, 4}, w.At, 1e-12)
	assert.InDelta(t, 3/math.Sqrt(3), w.Distance, 1e-12)
}

// Two inputs that are independent and of one variance, 4/3, both 1 below at the nearest point of
// 2 + x + y = 0; where x may be no less than −0.5 it is at −0.5 and −1.5: by hand.
func TestForetoldKeepsToTheRanges(t *testing.T) {
	x, y := []float64{0, 1, 1, -1, -1}, []float64{0, 1, -1, 1, -1}
	margin := make([]float64, len(x))
	for d := range x {
		margin[d] = 2 + x[d] + y[d]
	}
	free := math.Inf(1)
	of := func(low float64) float64 {
		return claim.Foretold([]claim.Lever{{Column: x, Low: low, High: free}, {Column: y, Low: -free, High: free}}, margin)
	}
	assert.InDelta(t, math.Sqrt(2.0*3/4), of(-free), 1e-6)
	assert.InDelta(t, math.Sqrt((0.25+2.25)*3/4), of(-0.5), 1e-6)
	assert.True(t, math.IsInf(claim.Foretold([]claim.Lever{{Column: x, Low: -0.5, High: 9}, {Column: y, Low: -1, High: 9}}, margin), 1), "both at their ends")
}

func linear(a []float64, g0 float64, centre []float64) claim.Margin {
	return func(x []float64) (float64, error) {
		g := g0
		for i := range x {
			g += a[i] * (x[i] - centre[i])
		}
		return g, nil
	}
}

func centreOf(list []claim.Lever) []float64 {
	centre := make([]float64, len(list))
	for i, l := range list {
		centre[i] = l.Column[0]
	}
	return centre
}

// The iteration finds what the closed form gives.
func TestNearestOfALinearMarginIsTheClosedForm(t *testing.T) {
	list := levers()
	a, centre := []float64{1, -0.5, 3, 0.02}, centreOf(list)
	want := claim.Linear(centre, covariance(list), 2.5, a)
	got, ok, err := claim.Nearest(list, nil, linear(a, 2.5, centre))
	require.NoError(t, err)
	require.True(t, ok)
	assert.InDelta(t, want.Distance, got.Distance, 1e-3)
	for i := range want.At {
		assert.InDelta(t, want.At[i], got.At[i], 2e-3*math.Sqrt(covariance(list).At(i, i))+1e-9)
	}
}

// bruteForce looks at every point of a grid of four levers, in standard deviations, and gives the
// least distance at which the margin is gone.
func bruteForce(list []claim.Lever, g claim.Margin, reach, step float64) float64 {
	cov := covariance(list)
	var precision mat.SymDense
	var factors mat.Cholesky
	factors.Factorize(cov)
	_ = factors.InverseTo(&precision)
	least := math.Inf(1)
	var at, off [4]float64
	var walk func(i int)
	walk = func(i int) {
		if i == len(at) {
			d := mat.NewVecDense(4, off[:])
			if squared := mat.Inner(d, &precision, d); squared < least*least {
				if m, _ := g(at[:]); m <= 0 {
					least = math.Sqrt(squared)
				}
			}
			return
		}
		sd := math.Sqrt(cov.At(i, i))
		for z := -reach; z <= reach+step/2; z += step {
			off[i] = z * sd
			if at[i] = list[i].Column[0] + off[i]; at[i] >= list[i].Low && at[i] <= list[i].High {
				walk(i + 1)
			}
		}
	}
	walk(0)
	return least
}

// For four inputs, linear or not, free or held by their ranges, no point of a grid breaks the claim
// from nearer by, and some does from hardly further.
func TestNearestAgainstBruteForce(t *testing.T) {
	const step = 0.25 // standard deviations: each of four may be half of it off
	share := func(x []float64) (float64, error) { return x[0]/(x[0]+x[1]+3*x[2]) - 0.5, nil }
	product := func(x []float64) (float64, error) { return 700 - x[0]*x[3]*x[2], nil }
	held := levers()
	held[0].Low = 9
	for _, c := range []struct {
		name string
		list []claim.Lever
		g    claim.Margin
	}{
		{"linear", levers(), linear([]float64{1, -0.5, 3, 0.02}, 2, centreOf(levers()))},
		{"share", levers(), share},
		{"product", levers(), product},
		{"linear held", held, linear([]float64{1, -0.5, 3, 0.02}, 2, centreOf(held))},
		{"share held", held, share},
	} {
		w, ok, err := claim.Nearest(c.list, nil, c.g)
		require.NoError(t, err)
		require.True(t, ok, c.name)
		m, _ := c.g(w.At)
		assert.LessOrEqual(t, m, 0.0, "%s: the world breaks the claim", c.name)
		for i, l := range c.list {
			assert.True(t, w.At[i] >= l.Low && w.At[i] <= l.High, "%s: lever %d keeps to its range", c.name, i)
		}
		var drawn []float64
		for d := range c.list[0].Column {
			x := make([]float64, len(c.list))
			for i := range x {
				x[i] = c.list[i].Column[d]
			}
			m, _ := c.g(x)
			drawn = append(drawn, m)
		}
		asked := 0
		again, ok, err := claim.Nearest(c.list, drawn, func(x []float64) (float64, error) { asked++; return c.g(x) })
		require.NoError(t, err)
		require.True(t, ok, c.name)
		assert.InDelta(t, w.Distance, again.Distance, 0.02*w.Distance, "%s: from the plane through the draws", c.name)
		t.Logf("%s: the margin was asked for %d times, %.3f foretold", c.name, asked, claim.Foretold(c.list, drawn))
		found := bruteForce(c.list, c.g, 4, step)
		t.Logf("%s: %.3f, by brute force %.3f", c.name, w.Distance, found)
		assert.LessOrEqual(t, w.Distance, found+0.01, c.name)
		assert.GreaterOrEqual(t, w.Distance, found-2.2*step, c.name) // the end of a range lies between two points of the grid
	}
}

// What no setting breaks has no nearest world.
func TestNoWorld(t *testing.T) {
	list := levers()
	for i := range list {
		list[i].Low, list[i].High = list[i].Column[0]*0.99, list[i].Column[0]*1.01
	}
	_, ok, err := claim.Nearest(list, nil, linear([]float64{1, 0, 0, 0}, 5, centreOf(list)))
	require.NoError(t, err)
	assert.False(t, ok)
	_, ok, err = claim.Nearest(levers(), nil, func([]float64) (float64, error) { return 1, nil })
	require.NoError(t, err)
	assert.False(t, ok, "a margin that nothing moves")
}
