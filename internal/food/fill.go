package food

import (
	"strconv"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// borrow takes from the lender, per 100 g, what the food does not state. Water
// is never borrowed: it is what the proximates leave.
func (e *entry) borrow(lender *Food) {
	taken := 0
	for _, v := range lender.Values {
		c, ok := constituent.Find(string(v.Constituent))
		if !ok || c.Kind == constituent.Figure || c.ID == constituent.Water || e.published[c.Order] || e.stands(c) {
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
