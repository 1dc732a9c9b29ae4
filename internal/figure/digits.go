package figure

import (
	"math"
	"strconv"
	"strings"
)

// DensityDigits: what matters of a density is how far it is from that of water.
const DensityDigits = 4

// MostDigits is how many significant digits a figure has at most.
const MostDigits = 3

// A standard deviation is kept to two digits if its first three are 100 to 354,
// to one if they are 355 to 949, and above that it counts as 1000 with two; the
// figure goes down to the same place (Particle Data Group, Phys. Rev. D 98 (2018)
// 030001, Introduction 5.3).
const twoDigitsUpTo = 3.55

// Place gives the power of ten of the last digit worth printing of x, whose
// standard deviation is sd, with at most so many significant digits. A figure
// without spread has all of them.
func Place(x, sd float64, most int) int {
	last := FirstPlace(x) - most + 1
	if sd <= 0 || math.IsNaN(sd) {
		return last
	}
	decade := FirstPlace(sd)
	if sd/math.Pow10(decade) < twoDigitsUpTo {
		decade--
	}
	if x == 0 || FirstPlace(x) < decade-MostDigits { // nothing, but for what arithmetic leaves
		return decade
	}
	return max(last, min(decade, FirstPlace(x)))
}

// FirstPlace gives the power of ten of the first significant digit.
func FirstPlace(x float64) int {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return 0
	}
	return int(math.Floor(math.Log10(math.Abs(x))))
}

// Rounded writes x to the place of a power of ten.
func Rounded(x float64, last int) string {
	if last > 0 {
		step := math.Pow10(last)
		x = math.Round(x/step) * step
	}
	text := strconv.FormatFloat(x, 'f', max(-last, 0), 64)
	if unsigned := strings.TrimPrefix(text, "-"); mustParse(unsigned) == 0 {
		return unsigned // no "-0"
	}
	return text
}

// Upward writes a bound, never below x itself: to the place of the figure beside
// it, with two significant digits at least and three at most.
func Upward(x float64, last int) string {
	const leastDigits, slack = 2, 1e-9 // 0.30000000000000004 is 0.3
	last = max(min(last, FirstPlace(x)-leastDigits+1), FirstPlace(x)-MostDigits+1)
	step := math.Pow10(last)
	return Rounded(math.Ceil(x/step-slack)*step, last)
}

// Span writes an interval at a place; it is empty if both ends print alike.
func Span(low, high float64, last int) string {
	a, b := Rounded(low, last), Rounded(high, last)
	if a == b {
		return ""
	}
	return a + "–" + b
}

// Plain writes a published figure as it is stored, without the noise of binary
// fractions.
func Plain(x float64) string { return Shortened(x, 6) }

// PlainSpread writes a published spread: three digits say all there is to say.
func PlainSpread(x float64) string { return Shortened(x, MostDigits) }

// Shortened writes x with so many significant digits, without the zeros that end them and without an exponent.
func Shortened(x float64, digits int) string {
	return strconv.FormatFloat(mustParse(strconv.FormatFloat(x, 'g', digits, 64)), 'f', -1, 64)
}

func mustParse(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return math.NaN()
	}
	return x
}
