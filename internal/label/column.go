package label

import (
	"fmt"
	"strings"

	"sipsum/internal/unit"
)

// column is a row on one basis: its sums (energy has two), how they are printed
// and the percentage of the reference.
type column struct {
	sums    []sum
	prints  []printed
	text    string // with units; what stands on the card
	number  bool   // text is a figure, not "unknown"
	percent string
	basis   string
	bands   []band
	ref     reference // value 0 if the row has none
	by      []string  // sources of the row, the bands, the reference
}

// column calculates a row on a basis.
func (r *ruleset) column(l line, f Facts, basis string) column {
	scale := 1.0
	switch basis {
	case Per100ml:
		scale = unit.Hundred / f.ServingMl
	case Per100g:
		scale = unit.Hundred / f.ServingG
	}
	c := column{basis: basis, bands: r.bands[l.rounding], by: []string{l.source}}
	var texts []string
	for i, u := range l.units {
		s := r.sumOf(l, u, f).times(scale)
		p, known := r.printSum(s, l)
		c.sums, c.prints = append(c.sums, s), append(c.prints, p)
		c.by = append(c.by, p.by.source)
		text := p.text
		c.number = known && (i == 0 || c.number)
		if known && i < len(l.printUnits) {
			text += " " + l.printUnits[i]
		}
		texts = append(texts, text)
	}
	c.text = strings.Join(texts, " / ")
	if !c.number {
		c.text = l.whenUnknown
	}
	r.addPercent(&c, l)
	return c
}

// printSum prints a sum. Where the known part is 0 and something is missing, the
// amount is not 0: it is printed as the rules print its upper limit if that is a
// small-amount text such as "<0.5 g", else as unknown.
func (r *ruleset) printSum(s sum, l line) (p printed, known bool) {
	bands := r.bands[l.rounding]
	p = render(s.known, bands)
	switch {
	case !s.anything:
		return printed{text: l.whenUnknown}, false
	case s.known > 0 || s.complete():
		return p, true
	case s.bounded():
		most := render(s.most, bands)
		if most.fixed || most.text == p.text {
			return most, true
		}
	}
	return printed{text: l.whenUnknown}, false
}

// addPercent gives the share of the reference in a serving.
func (r *ruleset) addPercent(c *column, l line) {
	ref, ok := r.references[l.reference]
	if !ok || c.basis != PerServing || !c.number {
		return
	}
	c.ref = ref
	share := c.sums[0].known / ref.value * unit.Hundred
	if c.prints[0].zero {
		share = 0 // a percentage beside a printed 0 would contradict it
	}
	p := render(share, r.bands[l.percent])
	c.percent = p.text + " %"
	c.by = append(c.by, ref.source, p.by.source)
}

func (c column) anything() bool { return c.sums[0].anything }

// wanted reports whether the row stands on the card.
func (c column) wanted(l line) bool {
	switch l.need {
	case "if known":
		return c.number
	case "if present":
		return c.number && !c.prints[0].zero
	}
	return true
}

// sources gives the rules that a figure rests on; factors of energy count only
// if something was multiplied by them.
func (c column) sources() []string {
	out := append([]string(nil), c.by...)
	for _, s := range c.sums {
		for _, p := range s.parts {
			if p.source != "" && p.amount.Mean > 0 {
				out = append(out, p.source)
			}
		}
	}
	return out
}

func (c column) cell(l line) *Cell {
	cell := &Cell{Printed: c.text}
	if c.anything() {
		cell.Value = &c.sums[0].known
		if len(c.sums) > 1 {
			cell.Kcal = &c.sums[1].known
		}
	}
	if s := c.sums[0]; s.bounded() && !s.complete() {
		cell.Most = &s.most
	}
	if strings.HasPrefix(l.percent, "dv") {
		cell.DailyValue = c.percent
	} else {
		cell.Reference = c.percent
	}
	return cell
}

// note says what is unknown of a row, if it changes what is printed.
func (c column) note(l line) (Note, bool) {
	name := strings.ToUpper(l.label[:1]) + l.label[1:]
	s := c.sums[0]
	in := l.units[0]
	switch {
	case !c.number && s.bounded():
		return Note{Kind: "unknown", Row: l.key, Text: fmt.Sprintf("%s: not known; at most %.3g %s per serving.", name, unit.Shown(s.most), in)}, true
	case !c.number:
		return Note{Kind: "unknown", Row: l.key, Text: name + ": not known, and neither is how much it can be at most."}, true
	case s.complete() || c.samePrint():
		return Note{}, false
	case s.bounded():
		return Note{Kind: "incomplete", Row: l.key, Text: fmt.Sprintf("%s: not complete; the card prints what is known (%.3g %s per serving), and it can be up to %.3g %s.", name, unit.Shown(s.known), in, unit.Shown(s.most), in)}, true
	}
	return Note{Kind: "incomplete", Row: l.key, Text: fmt.Sprintf("%s: not complete; the card prints what is known (%.3g %s per serving), and how much more there is nobody knows.", name, unit.Shown(s.known), in)}, true
}

// samePrint reports whether the amount with its bounds would print the same.
func (c column) samePrint() bool {
	return c.sums[0].bounded() && render(c.sums[0].most, c.bands).text == c.prints[0].text
}
