package claim

import (
	"math"

	"sipsum/internal/estimate"
)

// Weakest finds the input that the margin of a claim hangs on most: its place in the list and
// the share of the margin's variance that goes with it. -1 if none goes with it by more than noise.
func Weakest(margin []float64, inputs []estimate.Entry) (place int, share float64) {
	place = -1
	for i, in := range inputs {
		n := length(margin, in.Column)
		if n <= estimate.FewestDraws || len(margin) == 1 {
			continue
		}
		rho := correlation(margin[:n], in.Column[:n])
		if square := rho * rho; estimate.Counts(rho, 1, n-1) && square > share {
			place, share = i, square
		}
	}
	return place, share
}

// Beyond tells whether a claim holds in all draws, or in none, and would if they spread twice as far: whatever
// input is weak, it does not decide.
func Beyond(o Outcome) bool {
	const spread = 2 // our own bound
	if o.Sure < 1 && o.May > 0 {
		return false
	}
	centre := o.Margin[0]
	for _, x := range o.Margin[1:] {
		if wide := centre + spread*(x-centre); math.IsNaN(wide) || (o.Sure == 1) != (wide > 0) {
			return false
		}
	}
	return true
}

// correlation of the draws of two columns of one length, each seen from its central value; 0 where
// either has no spread.
func correlation(a, b []float64) float64 {
	var sumA, sumB, squaresA, squaresB, products float64
	for d := 1; d < len(a); d++ {
		x, y := a[d]-a[0], b[d]-b[0]
		sumA += x
		sumB += y
		squaresA += x * x
		squaresB += y * y
		products += x * y
	}
	n := float64(len(a) - 1)
	spreads := (squaresA - sumA*sumA/n) * (squaresB - sumB*sumB/n)
	if !(spreads > 0) || math.IsInf(spreads, 1) {
		return 0
	}
	return (products - sumA*sumB/n) / math.Sqrt(spreads)
}
