package estimate_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/estimate"
)

func TestMomentsAgainstReferenceData(t *testing.T) {
	// NIST Statistical Reference Datasets, univariate: NumAcc1, three observations, with
	// the certified mean 10000002 and standard deviation 1.
	s := estimate.Moments([]float64{5, 10000001, 10000003, 10000002})
	assert.Equal(t, estimate.Summary{Mean: 5, SD: 1, Low: 5, High: 5}, s, "the mean is the central value, not the draws'")
	// Two draws: half their distance times √2.
	assert.InDelta(t, 3/math.Sqrt2, estimate.Moments([]float64{0, 4, 7}).SD, 1e-15)
}

func TestAColumnWithoutSpread(t *testing.T) {
	// Without draws the central value is all there is.
	assert.Equal(t, estimate.Summary{Mean: 3, Low: 3, High: 3}, estimate.Summarise([]float64{3}))
	// A tenth is no binary number: a thousand of it have a mean that is not it, and no
	// spread all the same.
	col := slices.Repeat([]float64{0.1}, 1001)
	assert.Equal(t, estimate.Summary{Mean: 0.1, Low: 0.1, High: 0.1}, estimate.Summarise(col))
	// Where the draws agree on what the central value is not, the interval reaches from theirs
	// to it.
	assert.Equal(t, estimate.Summary{Mean: 1, Low: 1, High: 2}, estimate.Summarise([]float64{1, 2, 2, 2}))
	assert.Equal(t, estimate.Summary{Mean: 1, Low: 1, High: 2}, estimate.Summarise([]float64{1, 2}))
	assert.Equal(t, estimate.Summary{Mean: 3, Low: 2, High: 3}, estimate.Summarise([]float64{3, 2, 2}))
}

// Definition 7 of Hyndman and Fan 1996, Am. Stat. 50:361: the quantile of p lies at place
// (n − 1)·p, counted from 0, of what is sorted. Of 0 to n − 1 it is that place.
func TestQuantilesOfNumbersInARow(t *testing.T) {
	for _, n := range []int{2, 3, 20, 21, 22, 101, 200, 1000} {
		col := []float64{float64(n-1) / 2} // a mean in the middle
		for i := range n {
			col = append(col, float64((i*7919+13)%n)) // 7919 is prime: each once, out of order
		}
		s := estimate.Summarise(col)
		assert.InDelta(t, 0.05*float64(n-1), s.Low, 1e-9, "%d", n)
		assert.InDelta(t, 0.95*float64(n-1), s.High, 1e-9, "%d", n)
	}
}

// A summariser that has read a long column reads a short one as if it were new, and
// leaves both as they were.
func TestASummariserIsUsedAgain(t *testing.T) {
	long, short := fill(estimate.Input{Central: 2, Shape: estimate.Lognormal, SD: 1, Stream: 1}, 500), []float64{1, 5, 3, 4}
	before := slices.Clone(long)
	var s estimate.Summariser
	assert.Equal(t, estimate.Summarise(long), s.Of(long))
	assert.Equal(t, estimate.Summarise(short), s.Of(short))
	assert.Equal(t, estimate.Summarise(long), s.Of(long))
	assert.Equal(t, before, long)
	assert.Equal(t, []float64{1, 5, 3, 4}, short)
}

// Of columns of every shape the limits are those of the sorted draws (definition 7), to the bit: most of
// them in few values, far from the middle on one side or on both, with ties.
func TestLimitsAreThoseOfTheSortedDraws(t *testing.T) {
	shapes := map[string]estimate.Input{
		"even": {Shape: estimate.Uniform, Low: 1, High: 2}, "narrow": {Central: 5, Shape: estimate.Lognormal, SD: 1e-6},
		"lopsided": {Central: 1, Shape: estimate.Lognormal, SD: 5}, "very": {Central: 1, Shape: estimate.Lognormal, SD: 400},
		"cut": {Central: 0, Shape: estimate.Normal, SD: 1, Low: 0, High: 9}, "two": {Central: 0, Shape: estimate.Normal, SD: 9, Low: -1, High: 1},
	}
	for name, in := range shapes {
		for _, n := range []int{2, 3, 7, 20, 200, 1000} {
			in.Stream = estimate.Key(n)
			col := fill(in, n)
			sorted := slices.Sorted(slices.Values(col[1:]))
			limit := func(p float64) float64 {
				at := p * float64(n-1)
				i := int(at)
				return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
			}
			s := estimate.Summarise(col)
			assert.Equal(t, min(limit(0.05), col[0]), s.Low, "%s, %d draws", name, n)
			assert.Equal(t, max(limit(0.95), col[0]), s.High, "%s, %d draws", name, n)
		}
	}
}
