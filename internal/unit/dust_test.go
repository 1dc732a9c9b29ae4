package unit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/unit"
)

func TestAFigureIsWrittenWithoutDust(t *testing.T) {
	g, _ := unit.FindMeasure("g")
	tenth := 0.1
	for want, x := range map[string]float64{
		"0.3": tenth + 2*tenth, "26.9": 26.900000000000002, "2.01": 2.0100000000000002, "0": math.Copysign(0, -1), "-36.8": -36.800000000000004,
		"0.1234567890123": 0.1234567890123, "36.8000000001": 36.8000000001,
	} {
		assert.Equal(t, want, unit.Number(x))
		assert.Equal(t, want+" g", unit.Amount{Number: x, Measure: g}.String())
	}
	assert.True(t, math.IsNaN(unit.Clean(math.NaN())))
	assert.True(t, math.IsInf(unit.Clean(math.Inf(1)), 1))
}
