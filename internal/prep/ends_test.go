package prep_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/prep"
)

// Beyond the last temperature that has been read no more dissolves than at it.
func TestSolubilityEndsWithItsTable(t *testing.T) {
	assert.Greater(t, prep.Saturated(100), prep.Saturated(80))
	assert.Equal(t, prep.Saturated(1000), prep.Saturated(2000))
	assert.GreaterOrEqual(t, prep.Saturated(1000), prep.Saturated(100))
}

// What is frozen down to more solids than ice leaves is told in per cent, between the limit
// and all.
func TestFreezingTellsItsSolids(t *testing.T) {
	pot := potOf(juice())
	out, err := prep.Freeze(pot, grams(18), math.NaN(), factors)
	require.NoError(t, err)
	require.NotEmpty(t, out.Notes)
	solids := 1 - pot.Central("WATER")/pot.Mass()[0]
	require.Greater(t, solids, 0.3)
	assert.Regexp(t, `^[5-9]\d % solids: from about [3-9]\d % on the rest of the water does not freeze out$`, out.Notes[len(out.Notes)-1])
}

// A sugar that is stated cannot be more afterwards than before; said by how much.
func TestAFermentMakesNoSugar(t *testing.T) {
	pot := sugary(entered("must", "fruit juice", map[constituent.ID]float64{"WATER": 80, "GLUS": 10, "FRUS": 10}))
	_, err := prep.Ferment(pot, afterwards(map[constituent.ID]float64{"GLUS": 12}), unnamed(pot))
	require.ErrorContains(t, err, "more sugar afterwards than before")
	_, err = prep.Ferment(pot, afterwards(map[constituent.ID]float64{"GLUS": 8}), unnamed(pot))
	require.NoError(t, err)
}
