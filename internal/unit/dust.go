package unit

import (
	"math"
	"strconv"
)

const (
	cleanDigits = 12    // more than any scale, burette or table has
	dust        = 1e-14 // of a figure: what adding and dividing leaves of it in a double
)

// Clean takes the dust of a calculation off a figure before it is written: 26.900000000000002 is 26.9,
// and a minus does not stand before nothing. A figure that has its digits keeps them.
func Clean(x float64) float64 {
	if x == 0 {
		return 0 // of either sign
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', cleanDigits, 64), 64)
	if err == nil && math.Abs(rounded-x) <= dust*math.Abs(x) {
		return rounded
	}
	return x
}

// Number writes a number as a recipe would, without an exponent.
func Number(v float64) string { return strconv.FormatFloat(Clean(v), 'f', -1, 64) }
