package acid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
)

// A salt of a metal and chloride is neutral, whatever the metal's charge, and so is the
// water that it is dissolved in: its pH is half of pKw less what the activity
// coefficients of H⁺ and OH⁻ differ. Grams of a mol are IUPAC's standard atomic weights
// of 2021, abridged.
func TestSaltsOfStrongIonsAreNeutral(t *testing.T) {
	const chlorine = 35.45
	s := solver(t, 25)
	for id, salt := range map[constituent.ID]struct{ grams, chlorides float64 }{
		"NA": {22.990, 1}, "K": {39.098, 1}, "MG": {24.305, 2}, "CA": {40.078, 2},
	} {
		const mol = 0.01
		sol := gramsOf(t, map[constituent.ID]float64{"WATER": 2e6, id: 1000 * mol * salt.grams, "CLD": 1000 * mol * salt.chlorides * chlorine})
		assert.InDelta(t, 0, sol.StrongIonDifference(), 1e-6, id)
		state, err := s.Solve(sol, acid.State{})
		require.NoError(t, err)
		assert.InDelta(t, acid.PKw(25)/2, state.PH, 0.03, id)
		// ½Σz²m: 0.005 mol/kg of each, m of a 1:1 salt, 3m of a 1:2 salt.
		assert.InEpsilon(t, mol/2*(salt.chlorides*(salt.chlorides+1)/2), state.Ionic, 0.001, id)
	}
}

// Without its anion a metal's charge is all there is, per kg of water: the hydroxide of a
// divalent one is twice as strong.
func TestStrongIonDifferenceCountsCharges(t *testing.T) {
	for id, want := range map[constituent.ID]float64{"NA": 1, "K": 1, "MG": 2, "CA": 2, "CLD": -1} {
		const mol = 0.004
		sol := gramsOf(t, map[constituent.ID]float64{"WATER": 2e6, id: 1000 * mol * constituent.Must(id).Molar})
		assert.InDelta(t, want*mol/2, sol.StrongIonDifference(), 1e-12, id)
	}
}
