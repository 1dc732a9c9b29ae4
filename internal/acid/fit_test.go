package acid_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
)

// titrate reads points of a known liquid's curve, rounded as a bench meter does.
func titrate(t testing.TB, sol *acid.Solution, celsius, molPerPoint float64, points int) acid.Titration {
	t.Helper()
	s := solver(t, celsius)
	out := acid.Titration{Celsius: celsius, Solvent: sol.Solvent}
	for i := range points {
		base := molPerPoint * float64(i)
		water := base / 0.1 // a base of 0.1 mol/kg
		at := acid.New(0)
		at.Pour(sol, 1)
		at.Solvent += water
		at.AddIon(1, base)
		state, err := s.Solve(at, acid.State{})
		require.NoError(t, err)
		out.Points = append(out.Points, acid.Reading{Base: base, Solvent: water, PH: math.Round(state.PH*100) / 100})
	}
	return out
}

// liquids whose curves differ in shape: smooth, stepped, strong with calcium.
func liquids(t testing.TB) map[string]*acid.Solution {
	small := func(text string) *acid.Solution {
		out := acid.New(0)
		out.Pour(mix(t, text), 0.05) // a sample of 50 g
		return out
	}
	return map[string]*acid.Solution{
		"juice":     small("citric 0.05 malic 0.013 phosphoric 0.005 ascorbic 0.002 K 0.05 CA 0.002 MG 0.004"),
		"vinegar":   small("acetic 0.4 K 0.01"),
		"phosphate": small("phosphoric 0.05 K 0.02"),
		"coffee":    small("citric 0.002 quinic 0.004 acetic 0.003 chlorogenic 0.003 lactic 0.001 phosphoric 0.001 K 0.012"),
	}
}

func TestTitratedLiquidReproducesItsCurve(t *testing.T) {
	for name, sol := range liquids(t) {
		s := solver(t, 20)
		full, err := s.Base(sol, 8.5, acid.State{})
		require.NoError(t, err)
		const points = 12
		bench := titrate(t, sol, 20, full*sol.Solvent/(points-1), points)
		bench.Background = sol.Background / sol.Solvent
		fit, err := acid.Fit(bench)
		require.NoError(t, err, name)
		assert.LessOrEqual(t, fit.Worst, 0.05, name)

		for _, n := range fit.Sites {
			assert.GreaterOrEqual(t, n, 0.0, name)
		}
		// Between the points, and blended with citric acid, it behaves like the
		// liquid that it was read from. The tolerance is what a fit to eleven
		// readings of 0.01 pH can give.
		known, fitted := acid.New(0), acid.New(0)
		known.Pour(sol, 1)
		fitted.Pour(fit.Solution(sol.Solvent), 1)
		for _, add := range []float64{0.02, 0.01} {
			for _, mixed := range []*acid.Solution{known, fitted} {
				mixed.AddIon(1, add*full*sol.Solvent)
			}
			a, err := s.Solve(known, acid.State{})
			require.NoError(t, err)
			b, err := s.Solve(fitted, acid.State{})
			require.NoError(t, err)
			assert.InDelta(t, a.PH, b.PH, 0.1, name)
		}
		t.Logf("%s: worst %.3f pH over %.2f to %.2f", name, fit.Worst, fit.Lowest, fit.Highest)
	}
}

func TestTitrationsThatSayNothing(t *testing.T) {
	good := []acid.Reading{{PH: 3, Base: 0}, {PH: 4, Base: 1e-3}, {PH: 5, Base: 2e-3}}
	for name, bad := range map[string]acid.Titration{
		"two points":   {Celsius: 25, Solvent: 0.05, Points: good[:2]},
		"no water":     {Celsius: 25, Points: good},
		"falling":      {Celsius: 25, Solvent: 0.05, Points: []acid.Reading{good[0], good[2], good[1]}},
		"not a number": {Celsius: 25, Solvent: 0.05, Points: []acid.Reading{good[0], good[1], {PH: math.NaN(), Base: 2e-3}}},
	} {
		_, err := acid.Fit(bad)
		assert.ErrorContains(t, err, "three points", name)
	}
}

// Three points are enough: what they say is met.
func TestThreePointsAreATitration(t *testing.T) {
	bench := titrate(t, liquids(t)["juice"], 20, 1e-3, 3)
	fit, err := acid.Fit(bench)
	require.NoError(t, err)
	assert.LessOrEqual(t, fit.Worst, 0.05)
	assert.Equal(t, bench.Points[0].PH, fit.Lowest)
	assert.Equal(t, bench.Points[2].PH, fit.Highest)
}

// From pH 2 to 3 the protons of 50 g of water alone take (10⁻² − 10⁻³) · 0.05 = 0.45 mmol of
// base. Readings that get there with 2 µmol fit no liquid, and the fit says so: with so
// little base its own curve hardly moves, so it misses one end by half of that or more.
func TestReadingsOfNoLiquidAreMissed(t *testing.T) {
	fit, err := acid.Fit(acid.Titration{Celsius: 25, Solvent: 0.05, Points: []acid.Reading{{PH: 2}, {PH: 2.5, Base: 1e-6}, {PH: 3, Base: 2e-6}}})
	require.NoError(t, err)
	assert.Greater(t, fit.Worst, 0.45)
}
