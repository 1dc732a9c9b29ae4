package main

import (
	"math"
	"slices"
)

// share is the quantile of r that is the default within a source; doc.go says why.
const share = 0.70

// quantile interpolates between order statistics (definition 7 of Hyndman and
// Fan 1996, Am. Stat. 50:361), without the values that are not stated; NaN for
// nothing.
func quantile(x []float64, p float64) float64 {
	x = slices.DeleteFunc(slices.Clone(x), math.IsNaN)
	if len(x) == 0 {
		return math.NaN()
	}
	slices.Sort(x)
	at := p * float64(len(x)-1)
	i := min(int(at), max(len(x)-2, 0))
	if i+1 == len(x) {
		return x[i]
	}
	return x[i] + (at-float64(i))*(x[i+1]-x[i])
}

func median(x []float64) float64 { return quantile(x, 0.5) }
