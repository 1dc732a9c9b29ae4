package unit_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/unit"
)

func TestDustIsNoFigure(t *testing.T) {
	for want, x := range map[string]float64{"< 0.001": 2.31e-13, "0.0005": 0.0005, "0": 0, "1.2": 1.234, "2100": 2090} {
		assert.Equal(t, want, fmt.Sprintf("%.2g", unit.Shown(x)))
	}
	assert.Equal(t, "3.00", fmt.Sprintf("%.2f", unit.Shown(3)), "the digits that were asked for")
	assert.Equal(t, "12 g", fmt.Sprintf("%.0f g", unit.Shown(12.3)))
}
