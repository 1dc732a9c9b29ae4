package label

import (
	"math"
	"strconv"
	"strings"
)

// band says how an amount from a limit on is printed: to the nearest step, or
// as a fixed text.
type band struct {
	from      float64
	including bool // the limit itself belongs to the band
	step      float64
	decimals  int
	trim      bool // zeros after the point are dropped
	text      string
	source    string
}

// closeness is the share by which computer arithmetic may miss a limit.
const closeness = 1e-9

// covers reports whether an amount lies in the band.
func (b band) covers(x float64) bool {
	near := closeness * max(1, math.Abs(b.from))
	if b.including {
		return x >= b.from-near
	}
	return x > b.from+near
}

// nearest rounds to the nearest step, halves up.
func nearest(x, step float64) float64 {
	return math.Floor(x/step+0.5+closeness) * step
}

// printed is an amount as the rules print it.
type printed struct {
	text  string
	zero  bool // printed as 0
	fixed bool // a text of the rules stands for the amount, such as "<0.5"
	by    band
}

// render rounds an amount by the first band that covers it. What rounds up into
// a higher band is printed in that band's way: 9.96 is "10", not "10.0".
func render(x float64, bands []band) printed {
	for i, b := range bands {
		if !b.covers(x) {
			continue
		}
		if b.text != "" {
			return printed{text: b.text, zero: b.text == "0", fixed: true, by: b}
		}
		rounded := nearest(x, b.step)
		if i > 0 && bands[i-1].covers(rounded) && bands[i-1].step > 0 {
			b = bands[i-1]
			rounded = nearest(rounded, b.step)
		}
		text := strconv.FormatFloat(rounded, 'f', b.decimals, 64)
		if b.trim && strings.Contains(text, ".") {
			text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
		}
		return printed{text: text, zero: rounded == 0, by: b}
	}
	// Only an amount below zero reaches this, and amounts are not negative.
	return printed{text: "0", zero: true}
}
