package batch

import (
	"slices"

	"sipsum/internal/unit"
)

// Late is a pot that would keep for longer than what is in it is best: made on the day of the service
// it is used up on an earlier day.
type Late struct {
	Pot   string
	UseUp float64 // the day on which it is used up, the day it is made counted
}

// best judges until when a purchase is best by the day of the service, itself and in the pots that it
// goes into.
func (m *maker) best(p *Purchase) {
	day, asked := unit.Day(m.ask.Day)
	best, stated := unit.Day(p.Best)
	if !asked || !stated {
		return
	}
	left := float64(best - day + 1)
	if p.Past = left < 1; p.Past {
		return
	}
	for _, pot := range m.out.Pots {
		if pot.UseUp > left && slices.ContainsFunc(p.Of, func(of Part) bool { return m.within(pot.Name, of.Pot) }) {
			p.Late = append(p.Late, Late{pot.Name, left})
		}
	}
}

// within reports whether a pot is another, or holds it through however many.
func (m *maker) within(outer, name string) bool {
	if outer == name {
		return true
	}
	return slices.ContainsFunc(m.out.Pots, func(p Pot) bool { return m.holds(outer, p.Name) && m.within(p.Name, name) })
}
