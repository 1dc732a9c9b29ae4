package solution_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/solution"
)

func TestDensityAgainstPublishedSolutions(t *testing.T) {
	// Densities at 20 °C, g/ml: CRC Handbook of Chemistry and Physics,
	// "Concentrative properties of aqueous solutions".
	cases := []struct {
		solute    constituent.ID
		percent   float64
		want      float64
		tolerance float64
	}{
		{"SUCS", 2, 1.0060, 0.003}, {"SUCS", 12, 1.0465, 0.003}, {"SUCS", 24, 1.0990, 0.003}, {"SUCS", 46, 1.2079, 0.003}, {"SUCS", 60, 1.2864, 0.009},
		{"CITAC", 5, 1.0189, 0.003}, {"CITAC", 20, 1.0858, 0.003},
		{"ACEAC", 1, 0.9996, 0.0002}, {"ACEAC", 5, 1.0052, 0.0004}, {"ACEAC", 10, 1.0121, 0.0004}, {"ACEAC", 20, 1.0250, 0.002},
		{"LACAC", 1, 1.0002, 0.0002}, {"LACAC", 5, 1.0086, 0.0004}, {"LACAC", 20, 1.0439, 0.002},
		{"FORAC", 5, 1.0102, 0.0004}, {"OXALAC", 5, 1.0220, 0.0006},
		{"ALC", 5, 0.9893, 0.002}, {"ALC", 20, 0.9687, 0.002}, {"ALC", 40, 0.9352, 0.002},
		{"ASH", 5, 1.0340, 0.004}, // sodium chloride
	}
	for _, c := range cases {
		got, ok := solution.Density(map[constituent.ID]float64{c.solute: c.percent, constituent.Water: 100 - c.percent})
		require.True(t, ok)
		assert.InDelta(t, c.want, got, c.tolerance, "%v %% %s", c.percent, c.solute)
	}
	// Milk is 1.028 to 1.033 g/ml: common practice, no source.
	milk, _ := solution.Density(map[constituent.ID]float64{"WATER": 88.1, "PROCNT": 3.2, "FASAT": 3.3, "LACS": 4.7, "ASH": 0.7})
	assert.InDelta(t, 1.0305, milk, 0.004)
	none, ok := solution.Density(nil)
	assert.False(t, ok)
	assert.Zero(t, none)
}

func TestEverySpecificVolumeIsOfTheMass(t *testing.T) {
	for _, leaf := range constituent.Sums().Leaves(constituent.Mass) {
		v, _ := solution.VolumeOf(leaf.ID)
		assert.Positive(t, v.MlPerGram, leaf.ID)
		assert.NotEmpty(t, v.Source, leaf.ID)
	}
}

func TestABVAgainstOIML(t *testing.T) {
	// OIML R 22: 40 % by volume is 33.30 % by mass and 0.94805 g/ml at 20 °C.
	const grams = 100.0
	assert.InDelta(t, 40, solution.ABV(33.30, grams/0.94805), 0.01)
	assert.Zero(t, solution.ABV(1, 0))
}

// Density is a property of the mixture, not of how much there is of it.
func TestDensityDoesNotDependOnTheAmount(t *testing.T) {
	of := func(grams float64) float64 {
		density, ok := solution.Density(map[constituent.ID]float64{"WATER": 8 * grams, "SUCS": grams, "ALC": grams})
		assert.True(t, ok)
		return density
	}
	for _, grams := range []float64{0.001, 1, 2, 1000} {
		assert.InDelta(t, of(0.5), of(grams), 1e-12, "%g g", grams)
	}
}
