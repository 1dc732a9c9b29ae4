package label

import (
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/unit"
)

// column is a row on one basis: its sums (energy has two), how they are printed
// and the percentage of the reference.
type column struct {
	sums    []sum
	prints  []printed
	text    string // with units; what stands on the card
	number  bool   // text is a figure, not that it is not determined
	percent string
	basis   string
	bands   []band
	ref     reference // value 0 if the row has none
	by      []cited   // sources of the row, the bands, the reference
}

// column calculates a row on a basis.
func (r *ruleset) column(l line, f Facts, basis string) column {
	scale := scaleTo(basis, f)
	c := column{basis: basis, bands: r.bandsOf(l.rounding, f), by: []cited{l.cited}}
	var texts []string
	for i, u := range l.units {
		s := r.sumOf(l, u, f).times(scale)
		p, known := r.printSum(s, l, f)
		c.sums, c.prints = append(c.sums, s), append(c.prints, p)
		c.by = append(c.by, p.by.cited)
		text := p.text
		c.number = known && (i == 0 || c.number)
		if known && i < len(l.printUnits) {
			text += " " + l.printUnits[i]
		}
		texts = append(texts, text)
	}
	c.text = strings.Join(texts, " / ")
	if !c.number {
		c.text = r.unknown
	}
	r.addPercent(&c, l, f)
	return c
}

// both calculates a row in a serving and on a basis. A card that has determined it on one and
// not on the other would contradict itself: then it is determined on neither.
func (r *ruleset) both(l line, f Facts, basis string) (serving, first column) {
	serving = r.column(l, f, PerServing)
	if first = serving; basis != PerServing {
		first = r.column(l, f, basis)
	}
	if serving.number != first.number {
		serving, first = serving.undetermined(r), first.undetermined(r)
	}
	return serving, first
}

// undetermined is the column where it is not printed.
func (c column) undetermined(r *ruleset) column {
	c.text, c.number, c.percent = r.unknown, false, ""
	c.prints = slices.Clone(c.prints)
	for i := range c.prints {
		c.prints[i].text = r.unknown
	}
	return c
}

// scaleTo is what a serving is multiplied with for a basis.
func scaleTo(basis string, f Facts) float64 {
	switch basis {
	case Per100ml:
		return unit.Hundred / f.ServingMl
	case Per100g:
		return unit.Hundred / f.ServingG
	}
	return 1
}

// bandsOf gives the bands of a rounding whose conditions hold.
func (r *ruleset) bandsOf(name string, f Facts) []band {
	var list []band
	for _, b := range r.bands[name] {
		if r.hold(b.when, f) {
			list = append(list, b)
		}
	}
	return list
}

// printSum prints a sum. Where something is missing and the known part is printed as 0 or as
// a small amount ("<0.5"), that would say more than is known: it stands only if the end of the
// interval prints the same; else the end does, if it is a small amount itself, or nothing.
func (r *ruleset) printSum(s sum, l line, f Facts) (p printed, known bool) {
	bands := r.bandsOf(l.rounding, f)
	if !s.anything && !s.bounded() {
		return printed{text: r.unknown}, false
	}
	p = render(s.known, bands)
	switch {
	case s.complete():
		return p, true
	case s.anything && !p.zero && !p.fixed:
		return p, true
	case s.bounded():
		if most := render(s.most, bands); most.fixed || most.text == p.text {
			return most, true
		}
	}
	return printed{text: r.unknown}, false
}

// addPercent gives the share of the reference in a serving, and in 100 ml of what stands on
// the card for its share.
func (r *ruleset) addPercent(c *column, l line, f Facts) {
	ref, ok := r.references[l.reference]
	if !ok || c.basis != PerServing && !l.byShare() || !c.number {
		return
	}
	amount, zero := c.sums[0].known, c.prints[0].zero
	if (r.ofPrinted || l.ofPrinted) && !c.prints[0].fixed {
		amount = c.prints[0].value
	}
	if l.percentTerms != nil {
		amount, zero, ok = r.together(l, f)
		if !ok {
			return
		}
	}
	if zero {
		amount = 0 // a percentage beside a printed 0 would contradict it
	}
	c.ref = ref
	p := render(amount/ref.value*unit.Hundred, r.bandsOf(l.percent, f))
	c.percent = p.text + " %"
	c.by = append(c.by, ref.cited, p.by.cited)
}

// together adds up a serving's rows that share one percentage; zero if all of them print 0,
// ok false if one is not determined.
func (r *ruleset) together(l line, f Facts) (amount float64, zero, ok bool) {
	zero = true
	for _, t := range l.percentTerms {
		for _, other := range r.lines {
			if other.tag != t.id {
				continue
			}
			s := r.sumOf(other, other.units[0], f)
			p, known := r.printSum(s, other, f)
			if !known {
				return 0, false, false
			}
			amount, zero = amount+t.factor*s.known, zero && p.zero
		}
	}
	return amount, zero, true
}

// byShare reports whether the row stands on the card only from a share of its reference on.
func (l line) byShare() bool { return strings.HasPrefix(l.need, "share") }

// wanted reports whether the row stands on the card, by what its first column says.
func (c column) wanted(l line, r *ruleset) bool {
	some := c.number && !c.prints[0].zero && !c.prints[0].fixed
	switch l.need {
	case "always":
		return true
	case "if known":
		return c.number
	case "if present":
		return some
	}
	m := comparison.FindStringSubmatch(l.need)
	amount := c.sums[0].known
	if l.byShare() {
		amount *= unit.Hundred / r.references[l.reference].value
		some = some && (c.sums[0].complete() || c.samePrint())
	}
	return some && compare(amount, m[2], number(m[3]))
}

// sources gives the rules that a figure rests on; factors of energy count only
// if something was multiplied by them.
func (c column) sources() []cited {
	var out []cited
	for _, b := range c.by {
		if b.source != "" {
			out = append(out, b)
		}
	}
	for _, s := range c.sums {
		for _, p := range append(s.parts, s.rests...) {
			if p.source != "" && (p.amount.Mean > 0 || p.id == constituent.Energy || p.id == constituent.EnergyKcal) {
				out = append(out, p.cited)
			}
		}
	}
	return out
}

func (c column) cell(l line) *Cell {
	cell := &Cell{Printed: c.text}
	if s := c.sums[0]; s.anything || s.complete() {
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
