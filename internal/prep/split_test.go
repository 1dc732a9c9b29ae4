package prep_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/prep"
)

func TestSplitKeepsTheStatedShares(t *testing.T) {
	pot, before := potOf(cream()), potOf(cream())
	keep := []prep.Kept{{ID: "FAT", Share: grams(0.03)}, {ID: "PROCNT", Share: grams(0.5)}}
	_, err := prep.Split(pot, keep, nil)
	require.NoError(t, err)
	assert.InDelta(t, 0.03*central(before, "FAT"), central(pot, "FAT"), close)
	assert.InDelta(t, 0.5*central(before, "PROCNT"), central(pot, "PROCNT"), close)
	assert.Equal(t, before.Total("LACS"), pot.Total("LACS"), "what is not named stays whole")
	assert.Equal(t, before.Total("NA"), pot.Total("NA"))
}

func TestSplitCollectsTheStatedMass(t *testing.T) {
	pot, before := potOf(cream()), potOf(cream())
	_, err := prep.Split(pot, []prep.Kept{{ID: "FAT", Share: grams(0.03)}}, grams(40))
	require.NoError(t, err)
	for d, mass := range pot.Mass() {
		require.InDelta(t, 40, mass, close, "draw %d", d)
	}
	assert.InDelta(t, 0.03*35, central(pot, "FAT"), close)
	// Of the other 65 g, 40 g − 1.05 g stay, in one share.
	others := (40 - 0.03*35) / 65
	for _, id := range []constituent.ID{"WATER", "LACS", "PROCNT", "NA"} {
		assert.InDelta(t, others*central(before, id), central(pot, id), close, id)
	}
}

// A share stated for a part goes before the share of its parent, in any order.
func TestSplitTakesTheNearestStatedShare(t *testing.T) {
	for _, keep := range [][]prep.Kept{
		{{ID: "CHOCDF", Share: grams(0.5)}, {ID: "SUCS", Share: grams(0.9)}},
		{{ID: "SUCS", Share: grams(0.9)}, {ID: "CHOCDF", Share: grams(0.5)}},
	} {
		pot, before := potOf(juice()), potOf(juice())
		_, err := prep.Split(pot, keep, nil)
		require.NoError(t, err)
		assert.InDelta(t, 0.9*central(before, "SUCS"), central(pot, "SUCS"), close)
		assert.InDelta(t, 0.5*central(before, "CITAC"), central(pot, "CITAC"), close)
		assert.InDelta(t, 0.5*central(before, "FIBTG"), central(pot, "FIBTG"), close)
	}
}

func TestSplitRefusesTheImpossible(t *testing.T) {
	keep := []prep.Kept{{ID: "FAT", Share: grams(1)}}
	for name, collect := range map[string]float64{"more than there is": 100.1, "less than the 35 g that are kept by name": 34.9} {
		pot := potOf(cream())
		_, err := prep.Split(pot, keep, grams(collect))
		require.Error(t, err, name)
		assert.InDelta(t, 100, pot.Mass()[0], close)
	}
}
