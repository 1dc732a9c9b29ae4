package food

import (
	"strconv"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// borrow takes from the lender, per 100 g, what the food does not state. Water
// is never borrowed as it is: it is what the proximates leave (lentWater).
func (e *entry) borrow(lender *Food) {
	taken := 0
	for _, v := range lender.Values {
		c, ok := constituent.Find(string(v.Constituent))
		if !ok || c.Kind == constituent.Figure || c.ID == constituent.Water || e.published[c.Order] || e.there[c.Order] || e.stands(c) {
			continue
		}
		cell, known := cellOf(lender, c, v)
		if !known {
			continue
		}
		cell.State = max(cell.State, estimate.Calculated)
		cell.Why, cell.By = "borrowed from "+lender.ID.String(), Borrowed
		e.Cells[c.Order], e.published[c.Order] = cell, true
		taken++
	}
	if taken == 0 {
		return
	}
	for _, c := range constituent.All() {
		if c.Kind == constituent.Parent && e.published[c.Order] && e.cell(c).From == e.Food.ID {
			e.fit(c)
		}
	}
	e.note("borrowed", "", "%s borrowed from %s", counted(taken), lender.ID)
}

// counted writes a number of values.
func counted(values int) string {
	if values == 1 {
		return "1 value"
	}
	return strconv.Itoa(values) + " values"
}

// stands reports whether the food has explained the constituent by figures of
// its own: a total above it that its stated parts already make up.
func (e *entry) stands(c *constituent.Constituent) bool {
	if c.Kind != constituent.Parent {
		return false
	}
	for _, part := range constituent.Sums().Children(c.ID) {
		if e.published[part.Order] && e.cell(part).From == e.Food.ID {
			// Borrowing a total over own parts could contradict them.
			return true
		}
	}
	return false
}

// fit scales the borrowed parts of a stated total down so that the parts do not
// exceed it.
func (e *entry) fit(total *constituent.Constituent) {
	own, borrowed := 0.0, 0.0
	for _, part := range e.topmost(total.ID) {
		if e.cell(part).From == e.Food.ID {
			own += e.cell(part).Amount
		} else {
			borrowed += e.cell(part).Amount
		}
	}
	room := max(e.cell(total).Amount-own, 0)
	if borrowed <= room {
		return
	}
	shrink := room / borrowed
	for _, part := range constituent.All() {
		cell := e.cell(part)
		if e.published[part.Order] && cell.From != e.Food.ID && below(part, total.ID) {
			cell.Amount, cell.SD, cell.Limit = cell.Amount*shrink, cell.SD*shrink, cell.Limit*shrink
			cell.Why += ", scaled to the stated total"
		}
	}
}

// topmost gives the published constituents nearest below a parent: a published
// child, or the published ones below an unpublished child.
func (e *entry) topmost(parent constituent.ID) []*constituent.Constituent {
	var found []*constituent.Constituent
	for _, part := range constituent.Sums().Children(parent) {
		switch {
		case e.published[part.Order]:
			found = append(found, part)
		case part.Kind == constituent.Parent:
			found = append(found, e.topmost(part.ID)...)
		}
	}
	return found
}

func below(c *constituent.Constituent, ancestor constituent.ID) bool {
	for up := c.Parent; up != ""; up = constituent.Must(up).Parent {
		if up == ancestor {
			return true
		}
	}
	return false
}

// lending is an entry as its lender sees it.
type lending struct{ *entry }

// lentWater is the water of a lender that states its own beside all that weighs, less what the food has more of all
// else that is known: a copy that changes nothing has the lender's water, and what is of no
// known kind beside it.
func (e lending) lentWater() (amount float64, ok bool) {
	if e.lent == nil {
		return 0, false
	}
	water := e.lent.Cell(constituent.Water)
	if !e.lent.published[constituent.Must(constituent.Water).Order] || !weightyKnown(e.lent) {
		return 0, false
	}
	parts, _ := e.sum(constituent.Must(constituent.Mass))
	beside := whole - water.Amount - e.lent.Cell(constituent.MassOther).Amount
	return water.Amount + beside - parts, water.Known
}

// inherit gives what is borrowed the spread that the lender has of it: a figure that is lent
// tells of any food of the lender's name, and no more of the food that borrows it. It draws with
// the lender's draws.
func (e lending) inherit() {
	if e.lent == nil {
		return
	}
	for _, c := range constituent.All() {
		cell, lent := e.cell(c), e.lent.Cells[c.Order]
		if c.Kind == constituent.Parent || !e.lends(c) || !cell.Known || !lent.Known || cell.Amount <= 0 || lent.Amount <= 0 {
			continue
		}
		factor := cell.Amount / lent.Amount
		cell.SD, cell.Limit = lent.SD*factor, lent.Limit*factor
		cell.Tail, cell.Class, cell.Apart, cell.Most = lent.Tail, lent.Class, lent.Apart, lent.Most
		cell.From, cell.Row = e.Lender.ID, lent.Row
	}
	e.inheritTotals()
}

// lends reports whether a leaf or a rider has its figure from the lender: it is borrowed, or the
// rest of what is, or follows from the lender's as the water and a split by kin do.
func (e lending) lends(c *constituent.Constituent) bool {
	cell, lent := e.cell(c), e.lent.Cells[c.Order]
	switch {
	case c.ID == constituent.MassOther:
		return true
	case c.Kind == constituent.Rest:
		return e.cell(constituent.Must(c.Parent)).From == e.Lender.ID
	case cell.By == ByKin:
		return lent.By == ByKin && e.cell(constituent.Must(c.Parent)).From == e.Lender.ID
	}
	return cell.From == e.Lender.ID
}

// inheritTotals takes the totals of the lender of which the food states nothing, and after them
// its own: what a designer states holds.
func (e lending) inheritTotals() {
	var totals []Total
	for _, t := range e.lent.Totals {
		if amount, _ := e.sum(t.Constituent); amount > 0 && !e.statesOf(t.Constituent) {
			t.Cell.times(amount / t.Cell.Amount)
			totals = append(totals, t)
		}
	}
	for _, t := range e.Totals {
		if e.statesOf(t.Constituent) {
			totals = append(totals, t)
		}
	}
	e.Totals = totals
}

// statesOf reports whether the food itself states a total or a part of it.
func (p *Profile) statesOf(total *constituent.Constituent) bool {
	for _, part := range constituent.All() {
		if (part == total || below(part, total.ID)) && p.States(part) {
			return true
		}
	}
	return false
}
