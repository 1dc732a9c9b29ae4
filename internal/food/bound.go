package food

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

// assumeZeros fills what a sourced rule says does not occur in the food's
// group. A pure substance has nothing but what its formula says.
func (e *entry) assumeZeros() {
	for _, c := range constituent.All() {
		if e.published[c.Order] || c.Kind == constituent.Figure || c.Kind == constituent.Rest || c.ID == constituent.Mass {
			continue
		}
		zero := Cell{Known: true, State: estimate.Assumed, Bound: None, From: e.Food.ID, Row: e.Food.ID.String()}
		if e.Food.Chemical {
			zero.State, zero.Why = estimate.Calculated, "not in the formula"
			e.Cells[c.Order] = zero
			continue // a parent of a pure substance is the sum of its parts
		}
		if rule, ok := e.subject.ruleFor("zero", c); ok && !e.there[c.Order] { // a trace is not zero, and neither is what the owner does not know
			if c.Kind == constituent.Parent && e.anyPartAbove(c) {
				continue
			}
			zero.Why = "does not occur in " + e.Food.Group + ": " + rule.source
			e.Cells[c.Order], e.published[c.Order] = zero, true
		}
	}
}

// anyPartAbove reports whether a part of the parent is known to be there.
func (e *entry) anyPartAbove(parent *constituent.Constituent) bool {
	for _, leaf := range constituent.Sums().Leaves(parent.ID) {
		if e.published[leaf.Order] && e.cell(leaf).Amount > 0 {
			return true
		}
	}
	return false
}

// allow keeps what is carried of an added substance within what the law allows of it: however
// widely foods of the name differ, nobody sells more. What a designer states of a food in hand
// stands, and so does a figure that is above the law.
func allow(e *entry) {
	for _, c := range constituent.All() {
		cell := e.cell(c)
		if c.Kind != constituent.Rider || !cell.Known || e.States(c) {
			continue
		}
		if rule, ok := e.subject.ruleFor("allowed", c); ok {
			if most := rule.amount / (unit.Hundred * c.PerGram); most >= cell.Amount {
				cell.Most = most
			}
		}
	}
}

// bound finds, for each unknown, the most it could be.
func (e *entry) bound() {
	b := &bounding{entry: e}
	b.rooms = b.acidRooms()
	b.find()
}

// bounding is an entry whose known cells stand: what is left is how much the others
// could be.
type bounding struct {
	*entry
	rooms []acidRoom
}

// find goes through the parts first, since where nothing else bounds a total its unknown
// parts may; then through the totals first, since no part is more than its total.
func (b *bounding) find() {
	for _, c := range slices.Backward(constituent.All()) {
		if !b.open(c) {
			continue
		}
		limit, why := b.most(c)
		if !Stated(limit) {
			limit, why = b.partsBound(c), "its unknown parts could be no more"
		}
		b.limit(c, limit, why)
	}
	for _, c := range constituent.All() {
		if c.Parent == "" || !b.open(c) {
			continue
		}
		if total := b.cell(constituent.Must(c.Parent)); !total.Known && Stated(total.Bound) {
			b.limit(c, total.Bound, "no more than all that "+string(c.Parent)+" could be")
		}
	}
}

// open reports whether a constituent is an unknown that a bound can be found for.
func (b *bounding) open(c *constituent.Constituent) bool {
	return !b.cell(c).Known && c.Kind != constituent.Figure && c.Kind != constituent.Rest
}

// limit makes an unknown no more than a limit, if that is less than what is stated
// already. What can be no more than nothing is nothing.
func (b *bounding) limit(c *constituent.Constituent, limit float64, why string) {
	cell := b.cell(c)
	if !Stated(limit) || Stated(cell.Bound) && cell.Bound <= limit {
		return
	}
	cell.Bound, cell.Why = limit, why
	if limit == 0 {
		cell.Known, cell.State = true, estimate.Calculated
	}
}

// partsBound adds up what the unknown parts of a total could be; None if one of
// them has no bound, or if c is no total.
func (b *bounding) partsBound(c *constituent.Constituent) float64 {
	if c.Kind != constituent.Parent {
		return None
	}
	sum := 0.0
	for _, part := range constituent.Sums().Children(c.ID) {
		if cell := b.cell(part); !cell.Known && part.Kind != constituent.Rest {
			sum += cell.Bound // None stays None
		}
	}
	return sum
}

// most gives the most an unknown could be, in g/g, and why: the least of what
// the row's own balance, its acidity and its metals, what was found in foods of its name,
// a factor of another value, the group's highest published value and the law allow. None if nothing is known.
func (b *bounding) most(c *constituent.Constituent) (limit float64, why string) {
	limit, why = b.slack(c)
	lower := func(x float64, because string) {
		if !Stated(limit) || x < limit {
			limit, why = x, because
		}
	}
	if c.ID == constituent.OrganicAcids || below(c, constituent.OrganicAcids) {
		for _, r := range b.rooms {
			lower(r.most(c), r.why)
		}
	}
	if most, source := b.subject.lessInItsKind(c); Stated(most) {
		lower(most/(unit.Hundred*c.PerGram), "foods of its kind hold less: "+source)
	}
	if rule, ok := b.subject.ruleFor("factor", c); ok {
		if of := b.cell(constituent.Must(rule.of)); of.Known {
			varies := of.variance()
			if rule.of == constituent.Carbohydrate {
				varies = max(varies, b.differenceVariance())
			}
			lower(b.beyond(c, (of.Amount+2*math.Sqrt(varies))*rule.amount), "at most "+trimmed(rule.amount)+" × "+string(rule.of)+": "+rule.source)
		}
	}
	if rule, ok := b.subject.ruleFor("max", c); ok && !Stated(b.cell(c).Bound) { // a limit of its own knows better
		lower(b.beyond(c, rule.amount/(unit.Hundred*c.PerGram)), "highest value published in "+b.Food.Group+": "+rule.source)
	}
	if rule, ok := b.subject.ruleFor("allowed", c); ok && !Stated(b.cell(c).Bound) {
		lower(rule.amount/(unit.Hundred*c.PerGram), "no more is allowed in "+b.Food.Group+": "+rule.source)
	}
	if c.Parent != "" && limit > whole { // of None nothing is known, and 100 g say nothing
		limit, why = whole, "100 g are 100 g"
	}
	return limit, why
}

// beyond is what a limit of a whole constituent leaves beside the parts of it that are
// known, and two standard deviations of these.
func (b *bounding) beyond(c *constituent.Constituent, limit float64) float64 {
	if c.Kind != constituent.Parent {
		return limit
	}
	have, variance := b.sum(c)
	return max(limit-have, 0) + 2*math.Sqrt(variance)
}

// slack is what the row's own balance leaves for a part: the least, over the
// totals above it, of the rests in which it can be hidden and two standard
// deviations of that total and of its known parts. The last total is the mass,
// 100 g of 100 g.
func (b *bounding) slack(c *constituent.Constituent) (limit float64, why string) {
	limit = None
	hidden, unsure := 0.0, 0.0 // the rests from the part's own total up, and their variance
	rest := func(id constituent.ID) {
		cell := b.cell(constituent.Must(constituent.RestOf(id)))
		hidden, unsure = hidden+cell.Amount, unsure+cell.variance()
	}
	byDifference := !b.published[constituent.Must(constituent.Available).Order]
	for up := c.Parent; up != ""; up = constituent.Must(up).Parent {
		parent := constituent.Must(up)
		if up == constituent.Mass && !b.weighed() {
			break // the water is what the others left: it bounds nothing
		}
		rest(up)
		if up == constituent.Carbohydrate && byDifference && c.ID != constituent.Available && !below(c, constituent.Available) {
			rest(constituent.Available) // the unexplained part of a difference stands there
		}
		if total := b.cell(parent); !total.Known {
			if Stated(total.Bound) && (!Stated(limit) || total.Bound < limit) {
				limit, why = total.Bound, "no more than what is stated as the most of "+string(up)
			}
			continue
		}
		// What is left varies with the total and with its known parts.
		varies := b.cell(parent).variance()
		if up == constituent.Carbohydrate {
			varies = max(varies, b.differenceVariance())
		}
		most := hidden + 2*math.Sqrt(varies+max(b.variance(parent)-unsure, 0))
		if !Stated(limit) || most < limit {
			limit, why = most, "the row's own balance leaves no more under "+string(parent.ID)
		}
	}
	return limit, why
}

// differenceVariance is that of a carbohydrate by difference whatever it comes to: a
// difference of nothing is no measured nothing. A pure substance has none.
func (b *bounding) differenceVariance() float64 {
	if b.Food.Chemical {
		return 0
	}
	return math.Pow(b.differenceSD(), 2)
}

// weighed reports whether somebody has measured the water: then 100 g less it are what
// all the others make up.
func (e *entry) weighed() bool {
	return !e.waterDerived && e.published[constituent.Must(constituent.Water).Order]
}
