package sheet

import (
	"math"
	"strings"

	"sipsum/internal/composition"
	"sipsum/internal/contrast"
	"sipsum/internal/figure"
)

// finerUnits are the units in which what is small in its own is written, a thousandth of it.
var finerUnits = map[string]string{"g": "mg", "mg": "µg"}

// smallest is the size below which a figure is written in the finer unit: our own bound.
const smallest = 0.1

// scaleFor gives the unit for the figures of a row, and how many of them make one of their own.
func scaleFor(unit string, sizes ...float64) (string, float64) {
	most, factor := 0.0, 1.0
	for _, x := range sizes {
		if !math.IsNaN(x) {
			most = max(most, math.Abs(x))
		}
	}
	for most > 0 && most*factor < smallest && finerUnits[unit] != "" {
		unit, factor = finerUnits[unit], factor*1000
	}
	return unit, factor
}

// lastPlace is the power of ten of the last digit worth writing of a figure between two ends: as
// many digits as its spread bears (Particle Data Group 2018, Introduction 5.3), three at most.
func lastPlace(mean, low, high float64) int {
	const digits, twoUpTo = 3, 3.55
	size := max(math.Abs(mean), math.Abs(low), math.Abs(high))
	if size == 0 || math.IsNaN(size) || math.IsInf(size, 0) {
		return 0
	}
	last := figure.FirstPlace(size) - digits + 1
	half := (high - low) / 2
	if !(half > 0) {
		return last
	}
	decade := figure.FirstPlace(half)
	if half/math.Pow10(decade) < twoUpTo {
		decade--
	}
	return max(last, decade)
}

// places writes a figure to the place of a power of ten, without a sign.
func places(x float64, last int) string { return figure.Rounded(math.Abs(x), last) }

// signed writes a difference with its sign; none of nothing.
func signed(x float64, last int) string {
	text := places(x, last)
	switch {
	case strings.Trim(text, "0.") == "":
		return "0"
	case x < 0:
		return "−" + text
	}
	return "+" + text
}

// sideText is a figure of one of the drinks.
func sideText(r composition.Result, unit string, factor float64) string {
	if Hollow(r) || math.IsNaN(r.Mean) {
		return "not known"
	}
	text := places(r.Mean*factor, lastPlace(r.Mean*factor, r.Low*factor, r.High*factor))
	if r.Partial {
		text = "≥ " + text
	}
	return strings.TrimSuffix(text+" "+unit, " ")
}

// differenceText is a difference and the ends of its interval, in the unit that stands beside it.
func differenceText(d contrast.Difference, factor float64) (text, interval string) {
	if !d.Bounded() {
		return "nobody knows", ""
	}
	last := lastPlace(d.Mean*factor, d.Least*factor, d.Most*factor)
	if math.IsNaN(d.Mean) {
		last = lastPlace(d.Least*factor, d.Least*factor, d.Most*factor)
		text = "not told"
	} else {
		text = signed(d.Mean*factor, last)
	}
	low, high := signed(d.Least*factor, last), signed(d.Most*factor, last)
	if low != high {
		interval = low + " to " + high
	}
	return text, interval
}

// by writes how much more or less there is, without its sign: "1.3 g", and "(0.9–1.6)".
func by(d contrast.Difference, unit string) (amount, interval string) {
	unit, factor := scaleFor(unit, d.Mean, d.Least, d.Most)
	last := lastPlace(d.Mean*factor, d.Least*factor, d.Most*factor)
	low, high := places(d.Least*factor, last), places(d.Most*factor, last)
	if d.Mean < 0 {
		low, high = high, low
	}
	if low != high {
		interval = " (" + low + "–" + high + ")"
	}
	return strings.TrimSuffix(places(d.Mean*factor, last)+" "+unit, " "), interval
}
