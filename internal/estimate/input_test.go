package estimate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/estimate"
)

// Of a lognormal number the logarithm is normal, so its limits follow from those of the
// normal distribution: ±1.6449 at 5 and 95 %, 0 at the median (Abramowitz and Stegun
// 1964, table 26.5).
func TestLognormalLimits(t *testing.T) {
	const mean, sd, n = 4.8, 1.2, 200_000
	variance := math.Log(1 + sd*sd/mean/mean)
	sigma, median := math.Sqrt(variance), mean*math.Exp(-variance/2)
	col := fill(estimate.Input{Central: mean, Shape: estimate.Lognormal, SD: sd, Stream: estimate.KeyOf(1, "limits")}, n)
	s := estimate.Summarise(col)
	assert.InEpsilon(t, median*math.Exp(-1.6449*sigma), s.Low, 0.005)
	assert.InEpsilon(t, median*math.Exp(1.6449*sigma), s.High, 0.005)
	below := 0.0
	for _, x := range col[1:] {
		if x < median {
			below++
		}
	}
	assert.InDelta(t, 0.5, below/n, 4*0.5/math.Sqrt(n))
}

// A normal number keeps its mean and spread, and its share beyond a limit lies on the
// limit: 1 − Φ(1) = 0.158655 on each side (Abramowitz and Stegun 1964, table 26.1).
func TestNormalIsCutAtItsLimits(t *testing.T) {
	const n = 100_000
	key := estimate.KeyOf(1, "cut")
	free := fill(estimate.Input{Central: 10, Shape: estimate.Normal, SD: 2, Low: -90, High: 110, Stream: key}, n)
	mean, sd := stat.MeanStdDev(free[1:], nil)
	assert.InDelta(t, 10, mean, 4*2/math.Sqrt(n))
	assert.InEpsilon(t, 2, sd, 4/math.Sqrt(2*n))

	cut := fill(estimate.Input{Central: 10, Shape: estimate.Normal, SD: 2, Low: 8, High: 12, Stream: key}, n)
	low, high := 0.0, 0.0
	for i, x := range cut {
		switch x {
		case 8:
			low++
			assert.LessOrEqual(t, free[i], 8.0)
		case 12:
			high++
			assert.GreaterOrEqual(t, free[i], 12.0)
		default:
			assert.Equal(t, free[i], x)
		}
	}
	assert.InDelta(t, 0.158655, low/n, 0.005)
	assert.InDelta(t, 0.158655, high/n, 0.005)
}

func TestWhatHasNoSpreadIsTheSameInEachDraw(t *testing.T) {
	for name, in := range map[string]estimate.Input{
		"exact":              {Central: 3, Shape: estimate.Exact, SD: 1},
		"no deviation":       {Central: 3, Shape: estimate.Lognormal},
		"nothing to deviate": {Shape: estimate.Lognormal, SD: 1},
		"a range of nothing": {Central: 3, Shape: estimate.Uniform, Low: 3, High: 3},
	} {
		for _, x := range fill(in, 20) {
			assert.Equal(t, in.Central, x, name)
		}
	}
}

// Inputs that share all of their randomness are one; what they share keeps the spread.
func TestSharedRandomness(t *testing.T) {
	shared := make([]float64, draws)
	estimate.KeyOf(1, "class").Normals(shared)
	of := func(rho float64, shared []float64) []float64 {
		return fill(estimate.Input{Central: 0, Shape: estimate.Normal, SD: 1, Low: -9, High: 9, Stream: estimate.KeyOf(1, "own"), Shared: shared, Rho: rho}, draws)[1:]
	}
	own := of(0, nil)
	assert.Equal(t, own, of(0, shared))
	assert.Equal(t, own, of(1, nil), "nothing is shared with nobody")
	assert.Equal(t, shared, of(1, shared))
	for _, rho := range []float64{0.2, 0.8} {
		z := of(rho, shared)
		assert.InEpsilon(t, 1, stat.StdDev(z, nil), 0.03)
		assert.InDelta(t, math.Sqrt(rho), stat.Correlation(z, shared, nil), 0.02)
		assert.InDelta(t, math.Sqrt(1-rho), stat.Correlation(z, own, nil), 0.02)
	}
}

// What is shared moves all that share it the same way, whatever their shape.
func TestSharedRandomnessHasOneDirection(t *testing.T) {
	rising := []float64{-2, -1, 0, 1, 2}
	for _, shape := range []estimate.Shape{estimate.Lognormal, estimate.Normal} {
		col := fill(estimate.Input{Central: 5, Shape: shape, SD: 1, High: 99, Shared: rising, Rho: 1}, len(rising))
		assert.IsIncreasing(t, col[1:])
	}
}

// A number below one, and one that is spread by less than one, varies like any other.
func TestSmallNumbersVary(t *testing.T) {
	for _, in := range []estimate.Input{{Central: 0.05, SD: 0.01}, {Central: 20, SD: 0.4}} {
		in.Shape, in.Stream = estimate.Lognormal, estimate.KeyOf(1, "small")
		col := fill(in, draws)[1:]
		assert.InEpsilon(t, in.Central, stat.Mean(col, nil), 0.01)
		assert.InEpsilon(t, in.SD, stat.StdDev(col, nil), 0.03)
	}
}

// Zero is not above zero, and a column is as its worst draw.
func TestPositiveAsksEveryDraw(t *testing.T) {
	assert.True(t, estimate.Positive([]float64{1, 1e-9, 3}))
	assert.False(t, estimate.Positive([]float64{1, 0, 3}))
	assert.False(t, estimate.Positive([]float64{1, 2, -3}))
}
