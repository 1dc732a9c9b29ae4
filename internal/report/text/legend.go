package textreport

import (
	"slices"

	"sipsum/internal/composition"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/sheet"
)

// borrowedSign marks a figure that is another food's, and borrowedText explains it.
const (
	borrowedSign = "‡"
	borrowedText = sheet.BorrowedMeans
)

// byKinText explains what is known by kin.
const byKinText = sheet.ByKinMeans

// legend gathers the signs that a page has used, so that only those are
// explained.
type legend struct {
	atLeast, upTo, shares, bars, dagger, borrowed bool
	kin                                           bool // nobody measured a share of a total
	states                                        [estimate.Unknown + 1]bool
	unseen                                        []string // what acts on a pH by a strength from memory
	activity                                      bool     // a water activity rests on a constant from memory
}

// mark gives the sign in the margin for a state that needs one.
func (l *legend) mark(s estimate.State) string {
	sign := map[estimate.State]string{estimate.Assumed: "a", estimate.Trace: "t", estimate.Below: "b"}[s]
	if sign != "" {
		l.states[s] = true
	}
	return sign
}

// markOf gives the sign for how a result is known.
func (l *legend) markOf(r composition.Result) string {
	sign := l.mark(r.State)
	if r.By != food.ByKin || sign != "" {
		return sign
	}
	l.kin = true
	return "k"
}

// sign is a sign of a page and what it says.
type sign struct{ sign, says string }

// explain prints how the figures are meant, and the signs that the page has used.
func (p *page) explain(draws int) {
	var list []sign
	add := func(used bool, what, says string) {
		if used {
			list = append(list, sign{what, says})
		}
	}
	add(true, "9–11", sheet.RangeMeans(grouped(draws)))
	add(p.atLeast, "≥", sheet.AtLeastMeans)
	add(p.upTo, "up to", sheet.UpToMeans)
	add(p.shares && p.atLeast, "%", sheet.ShareMeans)
	add(p.bars, "██▒", "a share: full up to the lower end of its range, shaded up to the upper; 20 cells are the whole")
	add(p.states[estimate.Assumed], "a", sheet.AssumedMeans)
	add(p.states[estimate.Trace], "t", sheet.TraceMeans)
	add(p.states[estimate.Below], "b", sheet.BelowMeans)
	add(p.borrowed, borrowedSign, borrowedText)
	add(p.kin, "k", byKinText)
	add(p.daggerText() != "", "†", p.daggerText())
	p.heading("How to read it")
	p.signs(list)
}

// signs prints signs below each other.
func (p *page) signs(list []sign) {
	const indent = 9
	for _, s := range list {
		p.hanging("  "+left(s.sign, indent-2), indent, s.says)
	}
}

// memory gives the sign for what rests on a rule entered from memory.
func (p *page) memory(is bool) string { return remembered(is, &p.dagger) }

// remembered gives the sign for what was entered from memory, and notes of what kind it is.
func remembered(is bool, noted *bool) string {
	if !is {
		return ""
	}
	*noted = true
	return " †"
}

// daggerText says what was entered from memory, where it decides something; empty if nothing.
func (l *legend) daggerText() string {
	return sheet.MemoryMeans(l.dagger, l.unseen, l.activity)
}

// explainDagger prints what † says, on a page of no other signs.
func (p *page) explainDagger() {
	if text := p.daggerText(); text != "" {
		p.gap()
		p.paragraph(0, 2, "† "+text+".")
	}
}

// weak notes what acts on a pH by a strength that nobody has seen in print.
func (l *legend) weak(acids []string) {
	for _, a := range acids {
		if !slices.Contains(l.unseen, a) {
			l.unseen = append(l.unseen, a)
		}
	}
}
