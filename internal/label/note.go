package label

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/unit"
)

// note says what is unknown of a row, if it changes what is printed.
func (c column) note(l line) (Note, bool) {
	name := strings.ToUpper(l.label[:1]) + l.label[1:]
	s, in := c.sums[0], l.units[0]
	if !c.number {
		text := "not determined, and nothing says how much it can be at most."
		switch {
		case s.bounded() && s.known > 0:
			text = fmt.Sprintf("not determined; at least %.3g and at most %.3g %s per serving.", unit.Shown(s.known), unit.Shown(roundedUp(s.most)), in)
		case s.bounded():
			text = fmt.Sprintf("not determined; at most %.3g %s per serving.", unit.Shown(roundedUp(s.most)), in)
		}
		return Note{Kind: "unknown", Row: l.key, Text: name + ": " + text}, true
	}
	switch {
	case s.complete() || c.samePrint():
		return Note{}, false
	case s.bounded():
		return Note{Kind: "incomplete", Row: l.key, Text: fmt.Sprintf("%s: at least %.3g %s per serving, which the card prints; with what is not known it can be up to %.3g %s.", name, unit.Shown(s.known), in, unit.Shown(roundedUp(s.most)), in)}, true
	}
	return Note{Kind: "incomplete", Row: l.key, Text: fmt.Sprintf("%s: at least %.3g %s per serving, which the card prints; how much more there is nobody knows.", name, unit.Shown(s.known), in)}, true
}

// samePrint reports whether the amount with its bounds would print the same.
func (c column) samePrint() bool {
	return c.sums[0].bounded() && render(c.sums[0].most, c.bands).text == c.prints[0].text
}

// roundedUp is a figure to three digits and never less: an end that is rounded down is none.
func roundedUp(x float64) float64 {
	if x <= 0 {
		return x
	}
	const digits = 3
	step := math.Pow10(int(math.Floor(math.Log10(x))) - digits + 1)
	return math.Ceil(x/step-unit.Closeness) * step
}
