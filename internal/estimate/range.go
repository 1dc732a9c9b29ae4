package estimate

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
)

// RangeDivisor gives d₂(n), the expected range of n independent standard
// normal values:
//
//	d₂(n) = ∫ [1 − Φ(x)ⁿ − (1 − Φ(x))ⁿ] dx
//
// (Tippett 1925, Biometrika 17:364). A sample's range divided by it estimates
// the standard deviation. n below 2 gives NaN.
func RangeDivisor(n int) float64 {
	if n < 2 {
		return math.NaN()
	}
	const reach, points = 12, 400 // the integrand is below 1e-30 beyond ±12 for any n met in a table
	power := float64(n)
	integrand := func(x float64) float64 {
		p := distuv.UnitNormal.CDF(x)
		return 1 - math.Pow(p, power) - math.Pow(1-p, power)
	}
	return quad.Fixed(integrand, -reach, reach, points, nil, 0)
}
