package estimate

import (
	"math"

	"gonum.org/v1/gonum/stat"
)

// FewestDraws is the number of draws below which there is no covariance.
const FewestDraws = 2

// Noise is how many times 1/√draws a correlation must be to count: less is what a sample
// of draws shows between quantities that have nothing to do with each other (one in 400
// exceeds it).
const Noise = 3

// Disagreement is how many standard deviations two measurements of one thing may lie apart
// before that is said.
const Disagreement = 3

// Counts reports whether a covariance is more than the noise of a number of draws. sds is
// the product of the standard deviations.
func Counts(covariance, sds float64, draws int) bool {
	return sds > 0 && math.Abs(covariance) > Noise/math.Sqrt(float64(draws))*sds
}

// Variance of the draws of a column; 0 where there are too few.
func Variance(col []float64) float64 {
	if len(col)-1 < FewestDraws {
		return 0
	}
	return stat.Variance(col[1:], nil)
}

// Positive reports whether all of a column is above zero.
func Positive(col []float64) bool {
	for _, x := range col {
		if x <= 0 {
			return false
		}
	}
	return true
}

// Logs turns a column into its natural logarithms.
func Logs(col []float64) {
	for d, x := range col {
		col[d] = math.Log(x)
	}
}

// Ratio gives a / b · scale, 0 where b is 0.
func Ratio(a, b []float64, scale float64) []float64 {
	out := make([]float64, len(a))
	Divide(out, a, b, scale)
	return out
}

// Divide writes a / b · scale, 0 where b is 0.
func Divide(out, a, b []float64, scale float64) {
	for d, x := range a {
		out[d] = 0
		if b[d] > 0 {
			out[d] = x / b[d] * scale
		}
	}
}
