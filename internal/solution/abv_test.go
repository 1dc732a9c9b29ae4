package solution_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/solution"
)

// Ethanol at 20 °C is 0.7893 g/ml (OIML R 22): neat it takes up 1.267 ml a gram, not what it
// takes up in water, and is never stronger than 100 % vol.
func TestNeatEthanolIsItself(t *testing.T) {
	specific, _ := solution.VolumeOf("ALC")
	volume := 100*specific.MlPerGram + solution.Excess(0, 0, 100)
	assert.InDelta(t, 126.7, volume, 0.1)
	assert.InDelta(t, 100, solution.ABV(100, volume), 0.1)
}
