package unit

import (
	"fmt"
	"io"
	"strconv"
	"strings"
)

// Shown is a figure within a sentence: what no scale reads is no figure, and is written
// as less than a thousandth. It takes the verbs of a float64, and writes no exponent.
type Shown float64

const leastShown = 0.0005 // our own bound: what prints as 0.000

// Format writes the figure.
func (x Shown) Format(f fmt.State, verb rune) {
	if x > 0 && x < leastShown {
		_, _ = io.WriteString(f, "< 0.001") // a writer's error is its caller's
		return
	}
	text := fmt.Sprintf(fmt.FormatString(f, verb), float64(x))
	if rounded, err := strconv.ParseFloat(text, 64); err == nil && strings.Contains(text, "e") {
		text = strconv.FormatFloat(rounded, 'f', -1, 64)
	}
	_, _ = io.WriteString(f, text)
}
