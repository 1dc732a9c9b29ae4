package acid_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
)

func TestBaseAndSolveAreInverse(t *testing.T) {
	s, juice := solver(t, 25), orange(t)
	for _, pH := range []float64{2.5, 4, 5.5, 7, 8.1, 8.2, 10} {
		base, err := s.Base(juice, pH, acid.State{})
		require.NoError(t, err)
		titrated := orange(t)
		titrated.Strong += base * titrated.Solvent
		titrated.Background += math.Abs(base) * titrated.Solvent / 2
		state, err := s.Solve(titrated, acid.State{})
		require.NoError(t, err)
		assert.InDelta(t, pH, state.PH, 1e-9)
	}
}

// Where a titration starts is for speed only.
func TestTitrationDoesNotDependOnWhereItStarts(t *testing.T) {
	s := solver(t, 25)
	juice, other := orange(t), mix(t, "phosphoric 0.03 lactic 0.02 K 0.03 CA 0.01 MG 0.004")
	for _, pH := range []float64{2, 5, 8.1, 10} {
		cold, err := s.Titrate(juice, pH, acid.State{})
		require.NoError(t, err)
		near, err := s.Titrate(other, pH, acid.State{})
		require.NoError(t, err)
		warm, err := s.Titrate(juice, pH, near)
		require.NoError(t, err)
		assert.InDelta(t, cold.Base, warm.Base, 1e-12)
		assert.InDelta(t, cold.Ionic, warm.Ionic, 1e-12)
	}
}

func TestBufferCapacityOfStandardBuffers(t *testing.T) {
	// Buffer value β, mol/l per pH, Lange's Handbook of Chemistry, table 8.15; the
	// tolerance is half a unit of the last digit and 7 %. Two rows of that table,
	// tetroxalate 0.070 and borax 0.020, are not what their composition gives by
	// Van Slyke 1922 (J. Biol. Chem. 52:525), β = 2.303·([H⁺] + [OH⁻] + Σ c·α(1−α)):
	// 2.303 × 0.04 × ¼ = 0.023 for borax; they are held to that formula instead,
	// for tetroxalate with pK 1.25 and γ = 0.8, α = 0.77 and [H⁺] = 0.026.
	cases := []struct {
		composition     string
		want, tolerance float64
	}{
		{"tartaric 0.0341 K 0.0341", 0.027, 0.07}, {"citric 0.05 K 0.05", 0.034, 0.07}, {"phthalic 0.05 K 0.05", 0.016, 0.07},
		{"phosphoric 0.05 K 0.025 NA 0.05", 0.029, 0.07}, {"phosphoric 0.039125 K 0.008695 NA 0.06086", 0.016, 0.07}, {"carbonic 0.05 NA 0.075", 0.029, 0.07},
		{"boric 0.04 NA 0.02", 2.303 * 0.04 / 4, 0.07}, {"oxalic 0.1 K 0.05", 2.303 * (0.026 + 0.1*0.77*0.23), 0.07},
	}
	s := solver(t, 25)
	for _, c := range cases {
		sol := mix(t, c.composition)
		state, err := s.Solve(sol, acid.State{})
		require.NoError(t, err)
		got, err := s.Capacity(sol, state.PH, state)
		require.NoError(t, err)
		assert.InDelta(t, c.want, got, 0.0005+c.tolerance*c.want, c.composition)
	}
}

func TestTitratableAcidityOfPureAcids(t *testing.T) {
	// Grams of acid per milliequivalent: AOAC 942.15 (tartaric 0.075, malic 0.067,
	// lactic 0.090, acetic 0.060). To pH 8.1 all protons of these acids are gone.
	s := solver(t, 25)
	for id, grams := range map[string]float64{"tartaric": 75, "malic": 67, "lactic": 90, "acetic": 60, "oxalic": 45} {
		i := acid.Must(id)
		sol := acid.New(1)
		sol.Acids[i] = 0.02
		base, err := s.Base(sol, 8.1, acid.State{})
		require.NoError(t, err)
		assert.InDelta(t, grams, 0.02*acid.All()[i].Molar/base, 0.6, id)
		assert.InDelta(t, grams, acid.All()[i].Equivalent(), 0.6, id)
	}
}

func TestTitrationRises(t *testing.T) {
	s, juice := solver(t, 25), orange(t)
	state, err := s.Solve(juice, acid.State{})
	require.NoError(t, err)
	before, err := s.Base(juice, state.PH, state)
	require.NoError(t, err)
	assert.InDelta(t, 0, before, 1e-12)
	for pH := state.PH + 0.1; pH < 10; pH += 0.1 {
		base, err := s.Base(juice, pH, state)
		require.NoError(t, err)
		assert.Greater(t, base, before)
		before = base
	}
}

func TestDegassing(t *testing.T) {
	// CO2(aq) over air: 0.0340 mol/(kg atm) (Weiss 1974, 25 °C) times 0.0004 atm.
	const air = 0.0340 * 0.0004
	s := solver(t, 25)
	soda := mix(t, "citric 0.02 K 0.01 carbonic 0.1")
	_, err := s.Degas(soda, air, acid.State{})
	require.NoError(t, err)
	assert.Less(t, soda.Acids[acid.Must("carbonic")], 2e-5, "a sour drink keeps no carbon")
	base, err := s.Base(soda, 8.1, acid.State{})
	require.NoError(t, err)
	assert.InDelta(t, 3*0.02-0.01, base, 0.001)

	water := mix(t, "carbonic 0.01 NA 0.002") // a carbonated water keeps its bicarbonate
	_, err = s.Degas(water, air, acid.State{})
	require.NoError(t, err)
	assert.InDelta(t, 0.002, water.Acids[acid.Must("carbonic")], 0.0002)

	rain := acid.New(1) // pure water in air: pH 5.6, general chemistry
	state, err := s.Degas(rain, air, acid.State{})
	require.NoError(t, err)
	assert.InDelta(t, 5.6, state.PH, 0.05)
}

// TestDegassedIsAtEquilibrium looks whether what Degas leaves is an equilibrium of
// a closed bottle, with as much CO2(aq) as the gas keeps there.
func TestDegassedIsAtEquilibrium(t *testing.T) {
	s := solver(t, 25)
	for _, recipe := range []string{
		"carbonic 0.01 NA 0.002", "carbonic 0.001 CA 0.0015 MG 0.001 NA 0.001", "NA 0.02", "citric 0.01 K 0.028 CA 0.004 carbonic 0.002", "phosphoric 0.01 K 0.016 MG 0.003",
	} {
		for _, co2 := range []float64{1e-6, 1.36e-5, 0.034} {
			sol := mix(t, recipe)
			open, err := s.Degas(sol, co2, acid.State{})
			require.NoError(t, err, recipe)
			closed, err := s.Solve(sol, acid.State{})
			require.NoError(t, err, recipe)
			assert.InDelta(t, closed.PH, open.PH, 1e-9, recipe)
			forms, err := s.Forms(sol, closed)
			require.NoError(t, err)
			for _, f := range forms {
				if f.Acid == acid.Must("carbonic") && f.Charge == 0 && !f.Metal {
					assert.InEpsilon(t, co2, f.MolKg, 1e-9, recipe)
				}
			}
		}
	}
}

func TestDoseToAPH(t *testing.T) {
	s := solver(t, 25)
	juice, stock := orange(t), acid.New(0.9) // 100 g of malic acid in 900 g of water
	stock.Acids[acid.Must("malic")] = 100 / acid.All()[acid.Must("malic")].Molar
	pH := func(sol *acid.Solution) (float64, error) {
		state, err := s.Solve(sol, acid.State{})
		return state.PH, err
	}
	dose, err := acid.Dose(juice, stock, 1, 3.3, pH)
	require.NoError(t, err)
	mixed := acid.New(0)
	mixed.Pour(juice, 1)
	mixed.Pour(stock, dose)
	got, err := pH(mixed)
	require.NoError(t, err)
	assert.InDelta(t, 3.3, got, 1e-6)

	_, err = acid.Dose(juice, stock, 1, 5, pH)
	assert.ErrorIs(t, err, acid.ErrOutOfReach)
}

// What cannot be measured is not dosed: neither without the stock, nor with all of it, nor
// in between.
func TestDoseTellsWhatCannotBeMeasured(t *testing.T) {
	stock := acid.New(1)
	failed := errors.New("the probe is broken")
	for _, broken := range []float64{0, 0.5, 1} {
		_, err := acid.Dose(acid.New(0), stock, 1, 0.3, func(sol *acid.Solution) (float64, error) {
			if sol.Solvent == broken {
				return 0, failed
			}
			return sol.Solvent, nil
		})
		assert.ErrorIs(t, err, failed, "broken at %g", broken)
	}
	dose, err := acid.Dose(acid.New(0.3), stock, 1, 0.3, func(sol *acid.Solution) (float64, error) { return sol.Solvent, nil })
	require.NoError(t, err)
	assert.Zero(t, dose, "it is there already")
}
