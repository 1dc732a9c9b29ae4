package table_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/tables/table"
)

func TestParsePrinted(t *testing.T) {
	for text, want := range map[string]float64{"0": 0, "9.7": 9.7, "1.5e-3": 0.0015, "007": 7} {
		x, ok := table.ParsePrinted(text)
		assert.True(t, ok, text)
		assert.Equal(t, want, x, text)
	}
	for _, bad := range []string{"", "Tr", "-1", "-0", "1e400", "NaN", "Inf", "0x10", "1_0", "1,5", "< 1", "--", " 1"} {
		_, ok := table.ParsePrinted(bad)
		assert.False(t, ok, bad)
	}
}

func TestLastDigitsForgetStrayOnes(t *testing.T) {
	var d table.LastDigits
	for range 19 {
		d.Add(0, 9.7)
		d.Add(1, 12)
	}
	d.Add(0, 0.123456) // one in twenty: it counts
	d.Add(1, 0.5)
	d.Add(2, 9.6999999999999993)
	d.Add(3, 1e-300)
	for range 30 {
		d.Add(0, 3)
	}
	assert.Equal(t, 1, d.Decimals(0)) // one in fifty does not
	assert.Equal(t, 1, d.Decimals(1))
	assert.Equal(t, 0.05, d.Half(2))
	assert.Equal(t, 9, d.Decimals(3))
	assert.True(t, math.IsNaN(d.Half(4)))
}
