package food

import (
	"math"
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// whole is the mass that a food's parts must add up to, per gram.
const whole = 1.0

// balance makes every parent the sum of its parts: it gives each published
// total its rest and finds the water that nobody stated.
func (e *entry) balance() {
	all := constituent.All()
	for i := len(all) - 1; i >= 0; i-- { // parts stand after their parents
		if c := all[i]; c.Kind == constituent.Parent && c.ID != constituent.Mass {
			e.rest(c)
		}
	}
	e.water()
	mass := constituent.Must(constituent.Mass)
	parts, variance := e.sum(mass)
	if left := whole - parts; left > dust {
		sd, class := ClassSpread(mass, e.Food.Group)*left, true
		if by := math.Sqrt(variance); by < sd && !e.cell(constituent.Must(constituent.Water)).Known { // nothing but a difference
			sd, class = by, false
		}
		e.addRest(mass, constituent.MassOther, left, sd, class, "what 100 g have beyond the known parts")
	}
}

// dust is what rounding leaves of a difference, in g/g: it is nothing.
const dust = 1e-9

// rest gives a published parent its rest. Where only carbohydrate by difference
// is published, what its known parts leave is available carbohydrate.
func (e *entry) rest(parent *constituent.Constituent) {
	cell := e.cell(parent)
	parts, variance := e.sum(parent)
	if !e.published[parent.Order] {
		return
	}
	if parent.ID == constituent.Carbohydrate && cell.Class && e.weighed() {
		cell.SD = min(cell.SD, e.differenceSD())
	}
	into := parent.ID
	if parent.ID == constituent.Carbohydrate && !e.published[constituent.Must(constituent.Available).Order] {
		into = constituent.Available
		e.knowAvailable(cell)
	}
	if over := parts - cell.Amount; over > 0 {
		e.excess(parent, over)
		parts, variance = e.sum(parent)
	}
	left := cell.Amount - parts
	if left < dust {
		left = 0
	}
	sd, class := e.restSpread(parent, left, variance)
	if !e.giveRest(parent, left, sd, class) {
		e.addRest(parent, constituent.RestOf(into), left, sd, class, "what "+string(parent.ID)+" has beyond its known parts")
	}
	e.total(parent, into)
}

// differenceSD is how uncertain a carbohydrate by difference is: as what it is the
// difference of.
func (e *entry) differenceSD() float64 {
	variance := 0.0
	for _, part := range constituent.Sums().Children(constituent.Mass) {
		if part.ID != constituent.Carbohydrate {
			variance += e.variance(part)
		}
	}
	return math.Sqrt(variance)
}

// total keeps the spread of a published total that the spreads of its parts do
// not give: one that the total itself states, or a class default below what its
// parts add up to if each varies by itself. A carbohydrate by difference is no
// measurement and keeps the spread of its parts. What a designer states of a food in hand
// holds, ± 0 too: the parts vary within it, and the rest takes what they leave.
func (e *entry) total(parent *constituent.Constituent, into constituent.ID) {
	if e.split != nil && parent.ID == constituent.OrganicAcids {
		e.split.keep()
		return
	}
	cell := *e.cell(parent)
	parts, variance := e.sum(parent)
	if math.Abs(parts-cell.Amount) > 1e-9 || cell.Class && cell.SD*cell.SD >= variance {
		return
	}
	switch {
	case cell.Amount == 0:
	case e.States(parent) && !cell.Class:
		e.Totals = append(e.Totals, Total{Constituent: parent, Cell: cell, Rest: constituent.Must(constituent.RestOf(into))})
	case !byDifference(parent) && !cell.Exact():
		e.Totals = append(e.Totals, Total{Constituent: parent, Cell: cell})
	}
}

// restSpread gives the standard deviation of a rest, and whether it is a class
// default: what the parent's own stated spread has beyond its parts', else the
// class default (a class default of the parent says how such totals vary, not
// what this one has beyond its parts).
func (e *entry) restSpread(parent *constituent.Constituent, left, variance float64) (sd float64, class bool) {
	cell := e.cell(parent)
	switch own := cell.SD*cell.SD - variance; {
	case e.Food.Chemical:
		return 0, false
	case !cell.Class && own > 0:
		return min(math.Sqrt(own), left), false
	}
	return left * ClassSpread(parent, e.Food.Group), true
}

// giveRest gives what a parent has beyond its known parts to the one part that
// it can be: lactose is the sugar of milk (rules "rest" of data/bounds.csv).
func (e *entry) giveRest(parent *constituent.Constituent, left, sd float64, class bool) bool {
	for _, part := range constituent.Sums().Children(parent.ID) {
		rule, ok := e.subject.ruleFor("rest", part)
		if !ok || rule.of != parent.ID || e.published[part.Order] {
			continue
		}
		*e.cell(part) = Cell{
			Known: true, Amount: left, SD: sd, State: estimate.Calculated, Bound: None, From: e.cell(parent).From,
			Source: e.cell(parent).Source, Row: e.cell(parent).Row, Class: class, Why: "the rest of " + string(parent.ID) + ": " + rule.source, By: e.cell(parent).By,
		}
		e.published[part.Order] = true
		return true
	}
	return false
}

// knowAvailable marks available carbohydrate as known by difference.
func (e *entry) knowAvailable(carbohydrate *Cell) {
	c := constituent.Must(constituent.Available)
	*e.cell(c) = Cell{
		Known: true, SD: carbohydrate.SD, State: max(carbohydrate.State, estimate.Calculated), Bound: None, From: carbohydrate.From,
		Why: "CHOCDF − fibre − polyols − organic acids", Source: carbohydrate.Source, By: carbohydrate.By,
	}
}

// sum adds the known parts of a constituent and their variances; of a leaf, itself.
func (e *entry) sum(c *constituent.Constituent) (amount, variance float64) {
	leaves := constituent.Sums().Leaves(c.ID)
	if c.Kind != constituent.Parent {
		leaves = []*constituent.Constituent{c}
	}
	for _, leaf := range leaves {
		if cell := e.cell(leaf); cell.Known {
			amount += cell.Amount
			variance += cell.variance()
		}
	}
	return amount, variance
}

// addRest adds to the rest of a parent: a parent may be visited through two rules. The
// rest of a total that was borrowed within the table varies with its lender's.
func (e *entry) addRest(parent *constituent.Constituent, id constituent.ID, amount, sd float64, class bool, why string) {
	c := constituent.Must(id)
	cell, row := e.cell(c), e.Food.ID.String()
	if strings.HasPrefix(e.cell(parent).Source, Borrowed+" ") {
		row = e.cell(parent).Row
	}
	if cell.Known { // published rests do not exist
		amount += cell.Amount
	}
	*cell = Cell{
		Known: true, Amount: amount, SD: sd, State: estimate.Calculated, Bound: None,
		From: e.Food.ID, Row: row, Why: why, Class: class && amount > 0, By: e.cell(parent).By,
	}
}

// water is 100 − the known proximates where nobody states it. Where one of those that weigh
// is not known either, what is left may be that one: it is mass of no known kind
// (MASS-other), and the water no more than it.
func (e *entry) water() {
	c := constituent.Must(constituent.Water)
	if e.published[c.Order] || e.Food.Chemical {
		return
	}
	parts, _ := e.sum(constituent.Must(constituent.Mass))
	if lent, ok := (lending{e}).lentWater(); ok {
		*e.cell(c) = Cell{
			Known: true, Amount: min(max(lent, 0), max(whole-heaviestRider(e.Profile), 0)), State: estimate.Calculated, Bound: None,
			From: e.Lender.ID, Row: e.Lender.ID.String(), Source: e.lent.Cell(c.ID).Source, By: Borrowed,
			Why: "that of " + e.Lender.ID.String() + ", less what there is more of other parts",
		}
		return
	}
	// guard: what is carried is no water
	amount := max(whole-max(parts, heaviestRider(e.Profile)), 0)
	// guard: unknown is not water
	if !weightyKnown(e) {
		cell := e.cell(c)
		if !Stated(cell.Bound) || cell.Bound > amount {
			cell.Bound, cell.Why = amount, "what 100 g have beyond the known parts"
		}
		return
	}
	*e.cell(c) = Cell{
		Known: true, Amount: amount, SD: amount * ClassSpread(c, e.Food.Group), State: estimate.Calculated, Bound: None,
		From: e.Food.ID, Row: e.Food.ID.String(), Why: "100 − the known proximates; unknown fibre, acids and ash are in it", Class: true,
	}
	e.waterDerived = true
}

// weighty are the proximates of which a food can consist beside its water, each with what says
// it: the total itself, or parts of it that are all of what weighs.
var weighty = [][][]constituent.ID{
	{{constituent.Protein}},
	{{constituent.Fat}, {"FASAT", "FAMS", "FAPU"}},
	{{constituent.Carbohydrate}, {constituent.Available}, {constituent.Sugar, "STARCH"}},
}

// weightyKnown reports whether the food knows each of them, by figures or by a sourced zero.
func weightyKnown(e *entry) bool {
	known := func(id constituent.ID) bool { return e.published[constituent.Must(id).Order] }
	for _, ways := range weighty {
		if !slices.ContainsFunc(ways, func(parts []constituent.ID) bool {
			return !slices.ContainsFunc(parts, func(id constituent.ID) bool { return !known(id) })
		}) {
			return false
		}
	}
	return true
}

// heaviestRider is the most that a food has of anything which is no part of the sums: that
// much of it, at least, is no water. Riders may be parts of each other, so they do not add up.
func heaviestRider(p *Profile) float64 {
	most := 0.0
	for _, c := range constituent.All() {
		if cell := p.Cells[c.Order]; c.Kind == constituent.Rider && cell.Known {
			most = max(most, cell.Amount)
		}
	}
	return most
}

// addedSugar takes the added share of the sugars from the food's marks. It is
// drawn with the sugars (ledger), so it has no spread of its own here.
func (e *entry) addedSugar() {
	c := constituent.Must(constituent.AddedSugar)
	e.AddedShare = None
	for _, m := range e.Food.Marks {
		if m.Kind == "added sugar" {
			e.AddedShare = m.Share
			sugar := e.Cell(constituent.Sugar)
			cell := Cell{
				Known: true, Amount: m.Share * sugar.Amount, State: estimate.Calculated, Bound: None,
				From: e.Food.ID, Row: e.Food.ID.String(), Why: "added share of the sugars: " + m.Source,
			}
			if m.Share > 0 && !sugar.Known && sugar.Amount == 0 { // a share of what nobody knows is not known
				cell.Known, cell.State, cell.Bound = false, estimate.Unknown, m.Share*mostSugar(e.Profile) // None stays None
			}
			*e.cell(c) = cell
			return
		}
	}
	if e.published[c.Order] {
		return
	}
	cell := e.cell(c)
	cell.Bound, cell.Why = mostSugar(e.Profile), "no more than all sugars" // None stays None
	if cell.Bound == 0 {
		cell.Known, cell.State, cell.Bound, cell.Why = true, estimate.Calculated, None, "no sugars"
	}
}

// mostSugar is the most sugar that there can be: no more than a total above it leaves.
func mostSugar(p *Profile) float64 {
	sugar := p.Cell(constituent.Sugar)
	most := sugar.Amount
	if !sugar.Known {
		most += sugar.Bound
	}
	for up := constituent.Must(constituent.Sugar).Parent; up != ""; up = constituent.Must(up).Parent {
		if whole := p.Cell(up); whole.Known && most > whole.Amount { // not of NaN: nothing bounds it
			most = whole.Amount
		}
	}
	return most
}
