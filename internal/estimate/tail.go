package estimate

import (
	"math"
	"sync"

	"gonum.org/v1/gonum/integrate/quad"
)

// A tail makes a normal number heavy-tailed: most draws keep closer to the middle, few lie
// far out, and 5 and 95 % stay where they are (Fleishman 1978, Psychometrika 43:521, power
// method of the third degree):
//
//	h(z) = z·(1 + t·min(z², reach²)) / (1 + t·z₀²),   Φ(z₀) = 0.95
//
// Beyond reach standard deviations it goes on straight, so no draw runs away.
const (
	limit95 = 1.6448536269514722 // Φ⁻¹(0.95): Abramowitz and Stegun 1964, table 26.5
	reach   = 2.0                // our own bound: evidence of what lies further out is a handful of cells
)

// heavy turns standard normal numbers into heavy-tailed ones.
func heavy(z []float64, tail float64) {
	scale := 1 / (1 + tail*limit95*limit95)
	for i, x := range z {
		z[i] = x * (1 + tail*min(x*x, reach*reach)) * scale
	}
}

// aboveMedian is ln(mean/median) of exp(σ·h(z)): draws that are lowered by it have the mean
// that they shall have. σ is taken to a thousandth or so, so that foods alike share the work.
func aboveMedian(sigma, tail float64) float64 {
	const steps = 1024
	sigma = math.Round(sigma*steps) / steps
	key := [2]float64{sigma, tail}
	if known, ok := means.Load(key); ok {
		return known.(float64)
	}
	const far, points = 8, 128 // standard deviations; the density beyond is below 1e-14
	above := math.Log(quad.Fixed(func(z float64) float64 {
		h := []float64{z}
		heavy(h, tail)
		return math.Exp(sigma*h[0]) * bell(z) / math.Sqrt(2*math.Pi)
	}, -far, far, points, nil, 0))
	means.Store(key, above)
	return above
}

var means sync.Map // σ and tail → ln(mean/median)
