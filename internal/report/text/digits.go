package textreport

import (
	"math"
	"strconv"
	"strings"
)

// mostDigits is how many significant digits a figure has at most.
const mostDigits = 3

// A standard deviation is kept to two digits if its first three are 100 to 354,
// to one if they are 355 to 949, and above that it counts as 1000 with two; the
// figure goes down to the same place (Particle Data Group, Phys. Rev. D 98 (2018)
// 030001, Introduction 5.3).
const twoDigitsUpTo = 3.55

// place gives the power of ten of the last digit worth printing of x, whose
// standard deviation is sd, with at most so many significant digits. A figure
// without spread has all of them.
func place(x, sd float64, most int) int {
	last := firstPlace(x) - most + 1
	if sd <= 0 || math.IsNaN(sd) {
		return last
	}
	decade := firstPlace(sd)
	if sd/math.Pow10(decade) < twoDigitsUpTo {
		decade--
	}
	if x == 0 || firstPlace(x) < decade-mostDigits { // nothing, but for what arithmetic leaves
		return decade
	}
	return max(last, min(decade, firstPlace(x)))
}

// firstPlace gives the power of ten of the first significant digit.
func firstPlace(x float64) int {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return 0
	}
	return int(math.Floor(math.Log10(math.Abs(x))))
}

// rounded writes x to the place of a power of ten.
func rounded(x float64, last int) string {
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

// upward writes a bound, never below x itself: to the place of the figure beside
// it, with two significant digits at least and three at most.
func upward(x float64, last int) string {
	const leastDigits, slack = 2, 1e-9 // 0.30000000000000004 is 0.3
	last = max(min(last, firstPlace(x)-leastDigits+1), firstPlace(x)-mostDigits+1)
	step := math.Pow10(last)
	return rounded(math.Ceil(x/step-slack)*step, last)
}

// span writes an interval at a place; it is empty if both ends print alike.
func span(low, high float64, last int) string {
	a, b := rounded(low, last), rounded(high, last)
	if a == b {
		return ""
	}
	return a + "–" + b
}

// plain writes a published figure as it is stored, without the noise of binary
// fractions.
func plain(x float64) string { return shortened(x, 6) }

// plainSpread writes a published spread: three digits say all there is to say.
func plainSpread(x float64) string { return shortened(x, mostDigits) }

func shortened(x float64, digits int) string {
	return strconv.FormatFloat(mustParse(strconv.FormatFloat(x, 'g', digits, 64)), 'f', -1, 64)
}

func mustParse(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return math.NaN()
	}
	return x
}
