package acidity_test

import (
	"errors"
	"runtime"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/estimate"
)

// pure is citric acid in water, stated in full.
func pure(grams float64) figures {
	return figures{"WATER": 100 - grams, "K": 0, "NA": 0, "CLD": 0, "CA": 0, "MG": 0, "OA": grams, "CITAC": 1000 * grams}
}

// A hundredth of citric acid has an acidity of a hundredth as citric acid, in however many
// grams of it (AOAC 942.15: by definition), and pH 2.23 (pK 3.13, CRC Handbook of Chemistry and
// Physics: h² = 10⁻³·¹³·(0.0526 − h)).
func TestAcidityOfCitricAcidIsItsMass(t *testing.T) {
	f := assaytest.Exact("pure", "", pure(1))
	b := assaytest.NewBench(3, f)
	for _, grams := range []float64{1, 100} {
		pH, acidity, err := b.Lab.Acidity(b.Pot(grams, f))
		require.NoError(t, err)
		for d := range pH {
			assert.InEpsilon(t, 1, acidity[d], 0.02)
			assert.InDelta(t, 2.23, pH[d], 0.02)
		}
	}
	assert.InEpsilon(t, citricAcid, acidity.AsGrams(3), sameMass)
	assert.InEpsilon(t, citricAcid, acidity.AsCitric(0.03), sameMass, "hundredths of a gram")
}

// What stands in air takes its carbon dioxide up where it is alkaline: 0.05 mol/kg of
// potassium hydroxide becomes bicarbonate and carbonate of pH 9.8 (at 0.0004 atm: general
// chemistry); and loses it before a titration. What was read stands as it is.
func TestAnAlkalineDrinkStandsInAir(t *testing.T) {
	lye := assaytest.Exact("lye", "other", figures{"WATER": 99, "K": 200, "NA": 0, "CLD": 0, "CA": 0, "MG": 0, "P": 0, "OA": 0})
	b := assaytest.NewBench(3, lye)
	pot := b.Pot(100, lye)
	assert.InDelta(t, 9.8, pHOf(t, b, pot)[0], 0.3)
	in, sol := b.Lab.IonsOf(pot, 1), acid.New(0)
	s, err := acid.NewSolver(acidity.MeterCelsius)
	require.NoError(t, err)
	in.Fill(sol, 0)
	warm, err := in.Solve(s, sol, acid.State{}, 60)
	require.NoError(t, err)
	assert.Greater(t, warm.PH, pHOf(t, b, pot)[0]+0.05, "warm water holds less of it")
	b.Lab.Settle(pot)
	assert.Greater(t, pHOf(t, b, pot)[0], 12.0)
	closed := assaytest.Exact("lye", "other", figures{"WATER": 99, "K": 200, "NA": 0, "CLD": 0, "CA": 0, "MG": 0, "P": 0, "OA": 0, "CO2": 0})
	b = assaytest.NewBench(3, closed)
	assert.Greater(t, pHOf(t, b, b.Pot(100, closed))[0], 12.0, "none, as somebody has stated")
}

// Before a titration the gas goes, but for what a base holds as bicarbonate.
func TestDegassing(t *testing.T) {
	s, err := acid.NewSolver(acidity.MeterCelsius)
	require.NoError(t, err)
	carbonic := acid.Must("carbonic")
	degassed := func(citric, strong, gas, want float64) float64 {
		sol := acid.New(1)
		sol.Acids[acid.Must("citric")], sol.Acids[carbonic] = citric, gas
		sol.AddIon(1, strong)
		state, err := s.Solve(sol, acid.State{})
		require.NoError(t, err)
		assert.InDelta(t, want, state.PH, 0.4)
		require.NoError(t, acidity.Degas(s, sol, state))
		return sol.Acids[carbonic]
	}
	assert.Zero(t, degassed(0.01, 0.001, 0.05, 2.7), "soda with acid")
	assert.InDelta(t, 0.005, degassed(0, 0.005, 0.02, 5.9), 0.0003, "soda of a water: its bicarbonate stays")
	assert.Zero(t, degassed(0, 0.001, 0, 11), "none comes from nowhere")
}

// Work over draws meets every draw once, and tells what went wrong.
func TestEveryDrawIsWorkedOnce(t *testing.T) {
	for _, n := range []int{1, 2, 7, 201} {
		met := make([]int32, n)
		require.NoError(t, acidity.EachDraw(n, func(_ *acid.Solver, _ *acid.Solution, from, to int) error {
			for d := from; d < to; d++ {
				atomic.AddInt32(&met[d], 1)
			}
			return nil
		}))
		for d, times := range met {
			assert.Equal(t, int32(1), times, "draw %d of %d", d, n)
		}
	}
	wrong := errors.New("wrong")
	assert.ErrorIs(t, acidity.EachDraw(5, func(_ *acid.Solver, _ *acid.Solution, _, to int) error {
		if to == 5 {
			return wrong
		}
		return nil
	}), wrong)
	f := assaytest.Exact("juice", "fruit juice", juice)
	b := assaytest.NewBench(5, f)
	assert.ErrorIs(t, b.Lab.IonsOf(b.Pot(1, f), 6).Each(func(*acid.Solver, *acid.Solution, acid.State, acid.State, int) error { return wrong }), wrong)
}

// Any number of cores gives the same figures, to the last bit.
func TestCoresTellNoDifference(t *testing.T) {
	of := func(cores int) []float64 {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
		f, g := assaytest.Exact("silent", "fruit juice", silentAt(3.5)), assaytest.Exact("juice", "fruit juice", with(juice, figures{"PH": 3.4}))
		b := assaytest.NewBench(30, f, g)
		pH, acidity, err := b.Lab.Acidity(b.Pot(50, f, g))
		require.NoError(t, err)
		return append(pH, acidity...)
	}
	assert.Equal(t, of(1), of(3))
}

// Equilibria begin from the central values: as it stands, and at the end point.
func TestCentralEquilibria(t *testing.T) {
	f := assaytest.Exact("pure", "", pure(1))
	b := assaytest.NewBench(3, f)
	in, sol := b.Lab.IonsOf(b.Pot(100, f), 1), acid.New(0)
	s, err := acid.NewSolver(acidity.MeterCelsius)
	require.NoError(t, err)
	own, end, err := in.Central(s, sol)
	require.NoError(t, err)
	assert.InDelta(t, 2.23, own.PH, 0.02)
	assert.InDelta(t, 8.1, end.PH, 1e-9)
	assert.InEpsilon(t, 1, acidity.AsGrams(end.Base*sol.Solvent), 0.02)
}

// What a model misses is a tenth of a pH either way (row "model"), and a pot's own.
func TestModelErrorIsAPotsOwn(t *testing.T) {
	ens := estimate.Ensemble{Seed: 1, N: 201}
	col := acidity.ModelError(ens, "a")
	assert.Zero(t, col[0])
	spans(t, col, -0.1, 0.1)
	assert.NotEqual(t, col, acidity.ModelError(ens, "b"))
	assert.Equal(t, col, acidity.ModelError(ens, "a"))
}
