package textreport

import (
	"strings"

	"sipsum/internal/composition"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// daggerText explains †.
const daggerText = "† rests on a figure or a rule that is unverified, entered from memory: check the official text before use"

// borrowedSign marks a figure that is another food's, and borrowedText explains it.
const (
	borrowedSign = "‡"
	borrowedText = "‡ copied from another food: nobody has measured this food's own"
)

// byKinText explains what is known by kin.
const byKinText = "by kin: nobody measured it; foods of its kin share their acids so"

// legend gathers the signs that a page has used, so that only those are
// explained.
type legend struct {
	atLeast, upTo, shares, bars, dagger, borrowed bool
	kin                                           bool // nobody measured a share of a total
	states                                        [estimate.Unknown + 1]bool
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

// explain prints the signs that the page has used.
func (p *page) explain() {
	var signs []string
	add := func(used bool, text string) {
		if used {
			signs = append(signs, text)
		}
	}
	add(p.atLeast, "≥ the known part; where no “up to” follows, nothing bounds the rest")
	add(p.shares && p.atLeast, "where ≥ stands, shares are of the known part")
	add(p.upTo, "up to: the upper end of the interval with every unknown part at its most")
	add(p.states[estimate.Assumed], "a partly assumed")
	add(p.states[estimate.Trace], "t partly a trace")
	add(p.states[estimate.Below], "b partly below a limit")
	add(p.borrowed, borrowedText)
	add(p.kin, "k "+byKinText)
	add(p.bars, "bar: 20 cells are 100 %, shaded over the interval of the share")
	add(p.dagger, daggerText)
	p.gap()
	p.paragraph(0, 0, strings.Join(append([]string{"Intervals hold 90 % of the draws; a food of a table is any food of its name, wherever it is bought"}, signs...), " · ")+".")
}

// memory gives the sign for what rests on a rule entered from memory.
func (p *page) memory(is bool) string {
	if !is {
		return ""
	}
	p.dagger = true
	return " †"
}

// explainDagger prints what † says, on a page of no other signs.
func (p *page) explainDagger() {
	if p.dagger {
		p.gap()
		p.paragraph(0, 0, daggerText+".")
	}
}
