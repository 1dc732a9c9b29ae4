package main

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
)

// The quantile of the class that is its default; doc.go says why.
const (
	share      = 0.70
	sharePlace = 0.80 // of constituents that change with the place as with the lot
)

func shareOf(id string) float64 {
	if slices.Contains(placed, constituent.ID(id)) {
		return sharePlace
	}
	return share
}

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
