package unit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/unit"
)

// 15.0 · 100/100 comes out as 15.000000000000002.
func TestAFigureAtItsLimit(t *testing.T) {
	assert.False(t, unit.Over(15.000000000000002, 15))
	assert.True(t, unit.Over(15.001, 15))
	assert.True(t, unit.AtLeast(14.999999999999998, 15))
	assert.False(t, unit.AtLeast(14.999, 15))
	assert.False(t, unit.Over(math.NaN(), 15))
	assert.False(t, unit.AtLeast(math.NaN(), 15))
}
