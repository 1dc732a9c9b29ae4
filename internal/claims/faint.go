package claims

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// OnlyFaint tells whether all that a row holds of a constituent is a trace, or less than could be found.
// What a step made stands in no food, and counts.
func OnlyFaint(pot *ledger.Pot, row int, k *constituent.Constituent) bool {
	for _, c := range partsOf(k) {
		if some(pot.Of(row, c.ID)) && !faintly(pot, row, c) {
			return false
		}
	}
	return k.Kind != constituent.Figure
}

// HasTrace tells whether a food holds a trace of a part of a constituent, if its column is empty.
func HasTrace(p *food.Profile, k *constituent.Constituent) bool {
	return slices.ContainsFunc(partsOf(k), func(c *constituent.Constituent) bool { return isFaint(p, c) })
}

// faint is the most that a row holds of a constituent of which only is known that it is below a limit: the
// draws lie anywhere under it, and none of them is a figure. Nil where more is known, or the row has none.
func faint(pot *ledger.Pot, row int, k *constituent.Constituent) []float64 {
	var most []float64
	for _, c := range partsOf(k) {
		col := pot.Of(row, c.ID)
		if !some(col) {
			continue
		}
		if !faintly(pot, row, c) {
			return nil
		}
		if most == nil {
			most = make([]float64, pot.N)
		}
		limit := col[0]
		if cell := pot.Rows[row].Profile.Cells[c.Order]; cell.Amount > 0 && cell.Limit > cell.Amount {
			limit *= cell.Limit / cell.Amount
		}
		for d, x := range col {
			most[d] += max(limit, x)
		}
	}
	return most
}

// boundOf is the most that a gram of a food holds of what it does not know of a constituent: below a limit, or
// not at all; not a number where nothing bounds it.
func boundOf(p *food.Profile, k *constituent.Constituent) float64 {
	sum := 0.0
	for _, c := range partsOf(k) {
		if cell := p.Cells[c.Order]; isFaint(p, c) {
			sum += max(cell.Limit, cell.Amount)
		}
	}
	if cell := p.Cells[k.Order]; !cell.Known {
		sum += cell.Bound
	}
	return sum
}

// faintly tells whether what a row holds of a constituent is no more than the trace that its food states, and not
// made by a step besides: the fructose of a sugar that was split. A step that keeps juice and leaves pulp may
// leave ten times as much of it in what is dry (our own bound).
func faintly(pot *ledger.Pot, row int, c *constituent.Constituent) bool {
	const denser = 10
	p := pot.Rows[row].Profile
	if !isFaint(p, c) {
		return false
	}
	cell, water := p.Cells[c.Order], p.Cells[constituent.Must(constituent.Water).Order]
	dry := pot.CentralOf(row, constituent.Mass) - pot.CentralOf(row, constituent.Water)
	dryFood := 1 - water.Amount
	if !water.Known || dry <= 0 || dryFood <= 0 {
		return true
	}
	return pot.Of(row, c.ID)[0]/dry <= denser*max(cell.Limit, cell.Amount)/dryFood
}

func some(col []float64) bool {
	return slices.ContainsFunc(col, func(x float64) bool { return x > 0 })
}

// isFaint tells whether a food states a trace of a constituent or less than a limit, and of no more than
// that its cell was made: a trace without a limit enters the ledger as nothing known.
func isFaint(p *food.Profile, c *constituent.Constituent) bool {
	faint := func(s estimate.State) bool { return s == estimate.Trace || s == estimate.Below }
	v, stated := p.Food.Value(c.ID)
	cell := p.Cells[c.Order]
	return stated && faint(v.State) || cell.Known && faint(cell.State)
}

// partsOf gives what the ledger carries of a constituent: itself, or its parts.
func partsOf(k *constituent.Constituent) []*constituent.Constituent {
	var list []*constituent.Constituent
	for _, c := range constituent.All() {
		if c.InLedger() && within(c, k) {
			list = append(list, c)
		}
	}
	return list
}

// within tells whether a constituent is another, or a part of it.
func within(c, of *constituent.Constituent) bool {
	for c.ID != of.ID {
		if c.Parent == "" {
			return false
		}
		c = constituent.Must(c.Parent)
	}
	return true
}
