package burette_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"sipsum/internal/acid"
	"sipsum/internal/burette"
	"sipsum/internal/estimate"
)

// twoAcids is a liquid of which two acids are uncertain and nothing else, and a kit that is known.
type twoAcids struct {
	names  [2]string
	mean   [2]float64 // of the logarithm of mol
	sd     float64
	noise  float64
	off    float64 // mol
	strong float64
}

// prior gives the liquid as a recipe has it: the draws of a lognormal distribution at its own
// quantiles, so that they have no noise, the second acid's in another order.
func (a twoAcids) prior(draws int) (burette.Liquid, burette.Kit) {
	l := burette.Liquid{Rest: acid.New(sampleKg + waterKg), Strong: estimate.Constant(draws+1, a.strong)}
	for i, name := range a.names {
		col := make([]float64, draws+1)
		col[0] = math.Exp(a.mean[i])
		for d := range draws {
			at := d
			if i == 1 {
				at = int(math.Mod(float64(d)*math.Phi, 1) * float64(draws)) // goes with the first in nothing
			}
			col[1+d] = math.Exp(a.mean[i] + a.sd*distuv.UnitNormal.Quantile((float64(at)+0.5)/float64(draws)))
		}
		l.Acids = append(l.Acids, burette.Amount{Acid: acid.Must(name), Mol: col})
	}
	one := estimate.Constant(draws+1, 1)
	return l, burette.Kit{Noise: a.noise, Zero: estimate.Constant(draws+1, 0), Slope: one, Factor: one, Carbonate: estimate.Constant(draws+1, 0)}
}

// solution is what is in the beaker at a point.
func (a twoAcids) solution(x [2]float64, base float64) *acid.Solution {
	sol := acid.New(sampleKg + waterKg + base/molarity)
	sol.Strong, sol.Background = a.strong+base, a.strong/2+base/2
	for i, name := range a.names {
		sol.Acids[acid.Must(name)] += x[i]
	}
	return sol
}

// pH solves it.
func (a twoAcids) pH(t *testing.T, s *acid.Solver, x [2]float64, base float64) float64 {
	t.Helper()
	state, err := s.Solve(a.solution(x, base), acid.State{})
	require.NoError(t, err)
	return state.PH
}

// covariance is that of the pH that a meter shows at the points of a curve: its noise, the volumes
// by the slope of the curve, and what each acid's pK move together, dpH/dpK = amount·d(protons
// gone)/dpH over the buffering of the whole.
func (a twoAcids) covariance(t *testing.T, s *acid.Solver, x [2]float64, base []float64, pK [2]float64) *mat.SymDense {
	t.Helper()
	const step = 1e-4
	n := len(base)
	c := mat.NewSymDense(n, nil)
	moved := [2][]float64{make([]float64, n), make([]float64, n)}
	for k, b := range base {
		slope := (a.pH(t, s, x, b+1e-8) - a.pH(t, s, x, b-1e-8)) / 2e-8
		c.SetSym(k, k, a.noise*a.noise+slope*slope*a.off*a.off)
		at := a.pH(t, s, x, b)
		for i := range x {
			whole, without := x, x
			without[i] = 0
			need := func(x [2]float64, pH float64) float64 {
				sol := a.solution(x, 0)
				sol.Solvent += b / molarity
				state, err := s.Titrate(sol, pH, acid.State{})
				require.NoError(t, err)
				return state.Base * sol.Solvent
			}
			gone := func(pH float64) float64 { return need(whole, pH) - need(without, pH) }
			moved[i][k] = (gone(at+step) - gone(at-step)) / (need(whole, at+step) - need(whole, at-step))
		}
	}
	for i, sd := range pK {
		for k := range n {
			for q := k; q < n; q++ {
				c.SetSym(k, q, c.At(k, q)+sd*sd*moved[i][k]*moved[i][q])
			}
		}
	}
	return c
}

// spreadOf is how far the constants of an acid may be off: of its steps (data/acid_steps.csv), and
// 0.02 by the activity model (data/burette.csv).
func spreadOf(name string) float64 {
	most := 0.0
	for _, s := range acid.All()[acid.Must(name)].Steps {
		most = max(most, s.SD)
	}
	return math.Hypot(most, 0.02)
}

// In two dimensions the posterior can be summed up on a grid, with nothing linear in it but what
// the constants move: the sampler's intervals have the same ends, to a twentieth of their width.
func TestTheSamplerAgreesWithAnExactGrid(t *testing.T) {
	for _, c := range []struct {
		name string
		twoAcids
		truth [2]float64 // times the recipe
		step  float64    // mol of base
	}{
		{"citric and phosphoric, told apart", twoAcids{names: [2]string{"citric", "phosphoric"}, sd: 0.5, noise: 0.02, off: 2e-6, strong: 2e-4}, [2]float64{1.3, 0.8}, 4.2e-5},
		{"malic and lactic, hardly", twoAcids{names: [2]string{"malic", "lactic"}, sd: 0.3, noise: 0.03, off: 3e-6, strong: 2e-4}, [2]float64{0.8, 1.4}, 1.2e-5},
	} {
		c.mean = [2]float64{math.Log(1.5e-4), math.Log(1.2e-4)}
		s, err := acid.NewSolver(25)
		require.NoError(t, err)
		is := [2]float64{c.truth[0] * math.Exp(c.mean[0]), c.truth[1] * math.Exp(c.mean[1])}
		var points []burette.Point
		var base, read []float64
		for k := range 12 {
			b := c.step * float64(k)
			shown := c.pH(t, s, is, b) + c.noise*[]float64{0.3, -1.1, 0.6, 0.9, -0.2, -0.8, 1.2, 0.1, -0.5, 0.4, -1.3, 0.7}[k]
			points = append(points, burette.Point{Base: b, Water: b / molarity, Off: c.off, PH: shown})
			base, read = append(base, b), append(read, shown)
		}
		const draws = 6000
		l, kit := c.prior(draws)
		p, err := burette.Ask(estimate.Ensemble{Seed: 1, N: draws + 1}, "x", 25, l, kit, points)
		require.NoError(t, err)
		require.InDelta(t, 1, p.Scatter, 1e-9)

		var ch mat.Cholesky
		centre := [2]float64{p.Acids[0][0], p.Acids[1][0]}
		require.True(t, ch.Factorize(c.covariance(t, s, centre, base, [2]float64{spreadOf(c.names[0]), spreadOf(c.names[1])})))
		low, high := [2]float64{}, [2]float64{}
		for i := range low {
			col := slices.Clone(p.Acids[i][1:])
			slices.Sort(col)
			wide := col[len(col)-1] - col[0]
			low[i], high[i] = max(col[0]-wide/4, col[0]/2), col[len(col)-1]+wide/4
		}
		const cells = 70
		marginal := [2][]float64{make([]float64, cells), make([]float64, cells)}
		at := func(i, k int) float64 { return low[i] + (high[i]-low[i])*(float64(k)+0.5)/cells }
		for i := range cells {
			for j := range cells {
				x := [2]float64{at(0, i), at(1, j)}
				miss := mat.NewVecDense(len(base), nil)
				for k, b := range base {
					miss.SetVec(k, read[k]-c.pH(t, s, x, b))
				}
				var weighed mat.VecDense
				require.NoError(t, ch.SolveVecTo(&weighed, miss))
				log := -mat.Dot(miss, &weighed) / 2
				for d := range x {
					z := (math.Log(x[d]) - c.mean[d]) / c.sd
					log += -z*z/2 - math.Log(x[d])
				}
				marginal[0][i] += math.Exp(log)
				marginal[1][j] += math.Exp(log)
			}
		}
		for i, name := range c.names {
			grid := func(share float64) float64 {
				all, sum := 0.0, 0.0
				for _, w := range marginal[i] {
					all += w
				}
				for k, w := range marginal[i] {
					if sum+w >= share*all {
						return at(i, k) + (high[i]-low[i])/cells*((share*all-sum)/w-0.5)
					}
					sum += w
				}
				return math.NaN()
			}
			of := estimate.Summarise(p.Acids[i])
			width := grid(0.95) - grid(0.05)
			t.Logf("%s: %s: grid %.4g to %.4g mol, sampler %.4g to %.4g", c.name, name, grid(0.05), grid(0.95), of.Low, of.High)
			assert.InDelta(t, grid(0.05), of.Low, 0.05*width, "%s: %s", c.name, name)
			assert.InDelta(t, grid(0.95), of.High, 0.05*width, "%s: %s", c.name, name)
		}
	}
}
