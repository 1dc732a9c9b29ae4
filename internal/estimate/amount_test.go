package estimate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/estimate"
)

func TestAmount(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		what              string
		amount            estimate.Amount
		missing, most     float64
		knownMost         float64
		complete, bounded bool
	}{
		{"known", estimate.Amount{Mean: 2, WithBounds: 2, Known: true}, 0, 2, 2, true, true},
		{"known, with its interval", estimate.Amount{Mean: 2, WithBounds: 2, High: 3, UpTo: 3, Known: true}, 0, 3, 3, true, true},
		{"a part unknown", estimate.Amount{Mean: 2, WithBounds: 5, High: 3, UpTo: 6, Known: true}, 3, 6, 3, false, true},
		{"a part unbounded", estimate.Amount{Mean: 2, WithBounds: nan, High: 3, UpTo: nan, Known: true}, nan, nan, 3, false, false},
		{"unknown, with a bound", estimate.Amount{WithBounds: 4, High: 9, Known: false}, 4, 4, 0, false, true},
		{"more known than bounded is no lack", estimate.Amount{Mean: 2, WithBounds: 1, Known: true}, 0, 2, 2, true, true},
	} {
		for _, x := range [][2]float64{{c.missing, c.amount.Missing()}, {c.most, c.amount.Most()}, {c.knownMost, c.amount.KnownMost()}} {
			if math.IsNaN(x[0]) {
				assert.True(t, math.IsNaN(x[1]), c.what)
			} else {
				assert.Equal(t, x[0], x[1], c.what)
			}
		}
		assert.Equal(t, c.complete, c.amount.Complete(), c.what)
		assert.Equal(t, c.bounded, c.amount.Bounded(), c.what)
	}
	assert.Equal(t, estimate.Amount{Mean: 2, WithBounds: 4, High: 6, UpTo: 8, Known: true}, estimate.Amount{Mean: 1, WithBounds: 2, High: 3, UpTo: 4, Known: true}.Times(2))
}
