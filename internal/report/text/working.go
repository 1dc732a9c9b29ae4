package textreport

import (
	"fmt"
	"strconv"

	"sipsum/internal/label"
	"sipsum/internal/sheet"
)

// worked prints the cards and, under each, how every figure came about.
func (p cards) worked(s *sheet.Sheet, notes *footnotes) {
	workings := s.Workings()
	for i, c := range s.Cards() {
		p.card(&c)
		p.notes(&c)
		p.heading("How these figures came about, " + rulesName(c.Rules))
		for _, x := range workings[i] {
			p.working(x, notes)
		}
	}
}

// working prints one figure: the formula, what went in, what came out.
func (p cards) working(x label.Working, notes *footnotes) {
	var cited []int
	for _, source := range x.Sources {
		cited = append(cited, notes.number(source))
	}
	p.strong(0, 2, Clean(x.Label, mostName)+", "+x.Basis+": "+x.Formula+" "+signs(cited))
	for _, t := range x.Terms {
		amount := "unknown"
		if t.Amount != nil {
			amount = exactly(*t.Amount) + " " + t.Unit
		}
		text := amount + " " + t.Name
		switch {
		case t.Factor == 1:
		case t.Gives != nil:
			text += " × " + exactly(t.Factor) + " = " + exactly(*t.Gives)
		default:
			text += " × " + exactly(t.Factor) + " = unknown"
		}
		if t.Most != nil {
			text += " (up to " + exactly(*t.Most) + " " + t.Unit + ")"
		}
		p.hanging("  – ", 4, text)
	}
	result := "unknown"
	if x.Value != nil {
		result = exactly(*x.Value) + " " + x.Unit
	}
	result = fmt.Sprintf("  × %s for the basis → %s, printed %q", exactly(x.Scale), result, x.Printed)
	if x.Percent != "" {
		result += "; " + x.Percent + " of " + x.Against
	}
	p.paragraph(2, 4, result)
	if a := x.Accepted; a != nil {
		p.paragraph(2, 4, fmt.Sprintf("  declared %s %s: an authority accepts %s to %s %s %s", x.Printed, x.Unit, a.Low, a.High, x.Unit, signs([]int{notes.number(a.Source)})))
	}
}

// exactly writes a figure of a working with five significant digits: enough to
// follow it by hand. Less than a microgram is what arithmetic leaves.
func exactly(x float64) string {
	const dust = 1e-6 // our own bound: as of an amount, data/limits.csv
	if x > 0 && x < dust {
		return "< 0.000001"
	}
	return strconv.FormatFloat(x, 'g', 5, 64)
}
