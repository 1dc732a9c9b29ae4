package textreport

import (
	"fmt"
	"sipsum/internal/label"
	"sipsum/internal/sheet"
	"strconv"
)

// worked prints the cards and, under each, how every figure came about.
func (p cards) worked(s *sheet.Sheet, notes *footnotes) {
	workings := s.Workings()
	for i, c := range s.Cards() {
		p.card(&c)
		p.atLength(&c)
		p.heading("How these figures came about, " + rulesName(c.Rules))
		for _, x := range workings[i] {
			p.working(x, notes)
		}
	}
}

// working prints one figure: what went in, each with its factor, and what came out.
func (p cards) working(x label.Working, notes *footnotes) {
	var cited []int
	for _, source := range x.Sources {
		cited = append(cited, notes.Number(source))
	}
	p.strong(0, 2, Clean(x.Label, mostName)+", "+x.Basis+", in "+x.Unit+signs(cited))
	for _, t := range x.Terms {
		p.hanging("  – ", bulletIndent, termWords(t))
	}
	result := "unknown"
	if x.Value != nil {
		result = exactly(*x.Value) + " " + x.Unit
	}
	if x.Scale != 1 {
		result = "× " + exactly(x.Scale) + " for the amount it is given for = " + result
	} else {
		result = "= " + result
	}
	result += fmt.Sprintf(", printed %q", x.Printed)
	if x.Percent != "" {
		result += "; " + x.Percent + " of " + x.Against
	}
	p.paragraph(bulletIndent, 2, result)
	if a := x.Accepted; a != nil {
		p.paragraph(bulletIndent, 2, fmt.Sprintf("declared %s %s: an authority accepts %s to %s %s %s", x.Printed, x.Unit, a.Low, a.High, x.Unit, signs([]int{notes.Number(a.Source)})))
	}
}

// termWords says what goes into a figure: "10.497 g available carbohydrate × 17 = 178.44".
func termWords(t label.Term) string {
	amount, gives := "unknown", "unknown"
	if t.Amount != nil {
		amount = exactly(*t.Amount) + " " + t.Unit
	}
	if t.Gives != nil {
		gives = exactly(*t.Gives)
	}
	text := amount + " " + t.Name
	switch t.Factor {
	case 1:
	case -1:
		text = "less " + text
	default:
		text += " × " + exactly(t.Factor) + " = " + gives
	}
	if t.Most != nil {
		text += " (up to " + exactly(*t.Most) + " " + t.Unit + ")"
	}
	return text
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
