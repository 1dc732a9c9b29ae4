package label

import (
	"math"
	"strconv"
	"strings"

	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// band says how an amount from a limit on is printed: to the nearest step, to so many
// figures, or as a fixed text.
type band struct {
	from      float64
	including bool // the limit itself belongs to the band
	step      float64
	decimals  int
	figures   int  // at most so many significant ones; 0: any
	trim      bool // zeros after the point are dropped
	text      string
	when      []condition // all of them must hold
	cited
}

func readBand(r embedded.Row) band {
	b := band{
		from: r.Number("from"), including: r.Text("including") == "yes", trim: r.Text("trim") == "yes", text: r.Text("text"),
		when: readConditions(r), cited: citedBy(r),
	}
	if step, ok := r.Optional("step"); ok {
		b.step, b.decimals = step, decimals(r.Text("step"))
	}
	if figures, ok := r.Optional("figures"); ok {
		b.figures = int(figures)
	}
	return b
}

// covers reports whether an amount lies in the band.
func (b band) covers(x float64) bool {
	if b.including {
		return unit.AtLeast(x, b.from)
	}
	return unit.Over(x, b.from)
}

// nearest rounds to the nearest step, halves up.
func nearest(x, step float64) float64 {
	return math.Floor(x/step+0.5+unit.Closeness) * step
}

// stepFor gives the step and the decimals by which a band prints an amount: its own step, or
// the coarser one that its figures leave.
func (b band) stepFor(x float64) (step float64, decimals int) {
	if b.figures == 0 || x <= 0 {
		return max(b.step, smallest), b.decimals
	}
	power := int(math.Floor(math.Log10(x*(1+unit.Closeness)))) - b.figures + 1
	if least := math.Pow10(power); least > b.step {
		return least, max(-power, 0)
	}
	return b.step, b.decimals
}

// smallest is the step where a band states none and there is nothing to count figures of.
const smallest = 1e-12

// printed is an amount as the rules print it.
type printed struct {
	text  string
	value float64 // what is printed as a number; of a fixed text the amount itself
	zero  bool    // printed as 0
	fixed bool    // a text of the rules stands for the amount, such as "<0.5"
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
			return printed{text: b.text, value: x, zero: b.text == "0", fixed: true, by: b}
		}
		step, _ := b.stepFor(x)
		rounded := nearest(x, step)
		if higher := above(bands[:i]); higher != nil && higher.covers(rounded) {
			b = *higher
		}
		step, places := b.stepFor(max(x, rounded)) // 9.996 to three figures is 10.0
		rounded = nearest(rounded, step)
		text := strconv.FormatFloat(rounded, 'f', places, 64)
		if b.trim && strings.Contains(text, ".") {
			text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
		}
		return printed{text: text, value: rounded, zero: rounded == 0, by: b}
	}
	// Only an amount below zero reaches this, and amounts are not negative.
	return printed{text: "0", zero: true}
}

// above gives the nearest higher band that rounds; nil if none does.
func above(higher []band) *band {
	for i := len(higher) - 1; i >= 0; i-- {
		if higher[i].text == "" {
			return &higher[i]
		}
	}
	return nil
}
