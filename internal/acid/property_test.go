package acid_test

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
)

var compositions = flag.Int("compositions", 50_000, "random compositions to solve")

// random makes a composition over the whole range of drinks and beyond: from
// traces to 0.3 mol/kg of an acid, any of them absent, salts, calcium, magnesium.
func random(r *rand.Rand, s *acid.Solution) {
	s.Reset(0.05 + r.Float64())
	amount := func(most float64) float64 { return s.Solvent * most * math.Pow(10, -5*r.Float64()) }
	for i := range acid.All() {
		if r.IntN(4) == 0 {
			s.Acids[i] = amount(0.3)
		}
	}
	s.AddIon(1, amount(0.5))
	if r.IntN(2) == 0 {
		s.AddIon(-1, amount(0.3))
	}
	for m := range s.Metals {
		if r.IntN(2) == 0 {
			s.Metals[m] = amount(0.1)
		}
	}
	if r.IntN(4) == 0 {
		s.Ethanol = 0.2 * r.Float64() * s.Solvent
	}
}

// The charges are added up here from the forms themselves, apart from the
// solver's own sums.
func TestRandomCompositions(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	solvers := []*acid.Solver{solver(t, 0), solver(t, 6), solver(t, 25), solver(t, 60)}
	sol, near := acid.New(1), acid.State{}
	for n := range *compositions {
		random(r, sol)
		s := solvers[n%len(solvers)]
		state, err := s.Solve(sol, acid.State{})
		require.NoError(t, err, "%d: %+v", n, sol)
		require.LessOrEqual(t, math.Abs(state.Charge), 1e-12, "%d", n)
		warm, err := s.Solve(sol, near)
		require.NoError(t, err, "%d, warm", n)
		require.InDelta(t, state.PH, warm.PH, 1e-7, "%d: a warm start finds the same pH", n)
		near = state

		sol.AddIon(1, 1e-4*sol.Solvent)
		more, err := s.Solve(sol, state)
		require.NoError(t, err, "%d", n)
		require.Greater(t, more.PH, state.PH, "%d: base raises the pH", n)
	}
}

func TestFormsBalance(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 2))
	s, sol := solver(t, 25), acid.New(1)
	for n := range 2000 {
		random(r, sol)
		sol.Ethanol = 0
		state, err := s.Solve(sol, acid.State{})
		require.NoError(t, err)
		forms, err := s.Forms(sol, state)
		require.NoError(t, err)
		charge, ionic := sol.Strong/sol.Solvent, sol.Background/sol.Solvent
		totals := make([]float64, len(acid.All()))
		paired := 0.0
		for _, f := range forms {
			charge += float64(f.Charge) * f.MolKg
			ionic += float64(f.Charge*f.Charge) * f.MolKg / 2
			totals[f.Acid] += f.MolKg
			if f.Metal {
				paired += f.MolKg
			}
		}
		for i, total := range totals {
			require.InDelta(t, sol.Acids[i]/sol.Solvent, total, 1e-12)
		}
		free := state.Free[acid.Calcium] + state.Free[acid.Magnesium]
		require.InDelta(t, (sol.Metals[acid.Calcium]+sol.Metals[acid.Magnesium])/sol.Solvent, free+paired, 1e-12)
		charge += 2 * free
		// H⁺ and OH⁻ by the definition of pH, with Davies and Debye–Hückel (9 Å for
		// the hydrogen ion: Kielland 1937) written out again.
		root := math.Sqrt(min(state.Ionic, 0.6))
		davies := math.Pow(10, -0.5085*(root/(1+root)-0.2*min(state.Ionic, 0.6)))
		hydrogen := math.Pow(10, -0.5085*root/(1+0.3281*9*root))
		protons, hydroxide := math.Pow(10, -state.PH)/hydrogen, math.Pow(10, state.PH-acid.PKw(25))/davies
		charge += protons - hydroxide
		require.InDelta(t, 0, charge, 1e-12, "%d", n)
		ionic += 2*free + protons/2 + hydroxide/2 // ½Σz²m, z of a metal is 2
		require.InDelta(t, ionic, state.Ionic, 1e-11, "%d", n)
		require.Equal(t, ionic > 0.6, state.Beyond, "%d", n)
	}
}

// The slope that the solver steps by is that of the charge: a false one would only make
// it slow. It is compared with what the charge does over a small step.
func TestSlopeIsThatOfTheCharge(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 3))
	s, sol := solver(t, 25), acid.New(1)
	for n := range 3000 {
		random(r, sol)
		co2 := []float64{0, 1.4e-5}[n%2]
		if co2 > 0 {
			sol.Acids[acid.Must("carbonic")] = 0
		}
		const step = 1e-4
		x, ionic := -math.Ln10*(2+8*r.Float64()), 0.3*r.Float64()
		_, slope, err := s.Charge(sol, x, ionic, co2)
		require.NoError(t, err)
		above, _, err := s.Charge(sol, x+step, ionic, co2)
		require.NoError(t, err)
		below, _, err := s.Charge(sol, x-step, ionic, co2)
		require.NoError(t, err)
		require.InEpsilon(t, (above-below)/(2*step), slope, 1e-5, "%d", n)
	}
}

func TestSolveDoesNotAllocate(t *testing.T) {
	s := solver(t, 25)
	sol := mix(t, "citric 0.05 malic 0.013 phosphoric 0.005 sulphuric 0.0008 ascorbic 0.002 K 0.05 NA 0.0006 CLD 0.001 CA 0.002 MG 0.004")
	state, err := s.Solve(sol, acid.State{})
	require.NoError(t, err)
	assert.Zero(t, testing.AllocsPerRun(100, func() { _, err = s.Solve(sol, acid.State{}) }))
	assert.Zero(t, testing.AllocsPerRun(100, func() { _, err = s.Solve(sol, state) }))
	require.NoError(t, err)
}

func TestRefusals(t *testing.T) {
	for _, celsius := range []float64{-1, 61, math.NaN()} {
		_, err := acid.NewSolver(celsius)
		assert.Error(t, err)
	}
	s := solver(t, 25)
	_, err := s.Solve(acid.New(0), acid.State{})
	assert.ErrorContains(t, err, "without water")
	for _, bad := range []float64{-1, math.NaN(), math.Inf(1)} {
		sol := acid.New(1)
		sol.Acids[0] = bad
		_, err := s.Solve(sol, acid.State{})
		assert.ErrorContains(t, err, "an amount")
	}
	sol := acid.New(1)
	sol.AddIon(1, 1e6) // nothing in water balances that
	_, err = s.Solve(sol, acid.State{})
	assert.ErrorContains(t, err, "cannot be balanced")
}

func BenchmarkSolve(b *testing.B) {
	s := solver(b, 25)
	sol := mix(b, "citric 0.05 malic 0.013 phosphoric 0.005 sulphuric 0.0008 ascorbic 0.002 quinic 0.001 lactic 0.001 acetic 0.001 K 0.05 NA 0.0006 CLD 0.001 CA 0.002 MG 0.004")
	near, err := s.Solve(sol, acid.State{})
	require.NoError(b, err)
	b.Run("cold", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = s.Solve(sol, acid.State{})
		}
	})
	b.Run("warm", func(b *testing.B) {
		b.ReportAllocs()
		n := 0
		for b.Loop() {
			n++
			sol.Acids[0] = 0.05 * (1 + 0.1*math.Sin(float64(n))) // a draw away
			near, _ = s.Solve(sol, near)
		}
	})
}
