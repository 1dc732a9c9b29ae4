package claim

import (
	"math"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/estimate"
)

// Weakest finds the input that the margin of a claim hangs on most: its place in the list and
// the share of the margin's variance that goes with it. -1 if none goes with it by more than noise.
func Weakest(margin []float64, inputs []estimate.Entry) (place int, share float64) {
	place = -1
	for i, in := range inputs {
		rho := correlation(margin, in.Column)
		n := length(margin, in.Column) - 1
		if square := rho * rho; n >= estimate.FewestDraws && estimate.Counts(rho, 1, n) && square > share {
			place, share = i, square
		}
	}
	return place, share
}

// correlation of the draws of two columns, as far as both go; 0 where either has no spread.
func correlation(a, b []float64) float64 {
	n := length(a, b)
	if n <= estimate.FewestDraws || len(a) == 1 || len(b) == 1 {
		return 0
	}
	rho := stat.Correlation(a[1:n], b[1:n], nil)
	if math.IsNaN(rho) {
		return 0
	}
	return rho
}
