package assay_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
)

// A peel that is eaten beside a drink does not dissolve in it.
func TestAnEatenPeelLeavesAReadDrinkAlone(t *testing.T) {
	c := assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild: [36 g core:espresso]\nfinish:\n  - measured: {ph: 4.90}\ngarnish:\n  - {food: \"core:orange-peel\", amount: 2 g, eaten: true}\n", 500).Chemistry
	require.Empty(t, c.PHMeter.Why)
	assert.InDelta(t, 4.90, c.PHMeter.Mean, 0.01)
	assert.Less(t, c.PHMeter.High-c.PHMeter.Low, 0.2)
}
