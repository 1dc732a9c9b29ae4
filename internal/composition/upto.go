package composition

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// A bound is of central values (package ledger), so there are two ends of what could
// be: with bounds is the mean with every unknown part at its most, up to is the 95 %
// end of the draws with every unknown part at its most. No part is more than its
// whole, in every draw; so neither end is above that of any total above it, and none
// above the mass.

// ceiling is what the totals of a composition leave to their parts.
type ceiling map[constituent.ID]end

// end is with bounds and up to in one unit; NaN where nothing is known.
type end struct{ withBounds, upTo float64 }

// under lowers an end to those of the totals above a constituent. What has no end of
// its own gets none.
func (c ceiling) under(id constituent.ID, e end) end {
	for up := constituent.Must(id).Parent; up != ""; up = constituent.Must(up).Parent {
		if most, ok := c[up]; ok {
			e.withBounds, e.upTo = lower(e.withBounds, most.withBounds), lower(e.upTo, most.upTo)
		}
	}
	return e
}

// lower is the less of two numbers, of which the second may not be stated.
func lower(x, most float64) float64 {
	if food.Stated(most) && x > most {
		return most
	}
	return x
}

// upTo gives the 95 % end of a column with its unknown part at its most.
func (m *Meter) upTo(total, divisor []float64, bound, scale, withBounds float64) float64 {
	if m.Brief || math.IsNaN(bound) {
		return math.NaN()
	}
	if len(m.full) != len(total) {
		m.full = make([]float64, len(total))
	}
	for d, x := range total {
		m.full[d] = x + bound
	}
	return max(m.ratioOf(m.full, divisor, scale).High, withBounds)
}

// MostOf gives the most that is unknown of a constituent over some rows of a pot, in
// grams at central values, and those of them that do not know it. No row has more of a
// part than of its total.
func MostOf(pot *ledger.Pot, id constituent.ID) (bound float64, unknown []int) {
	_, unknown = pot.Bound(id)
	for _, row := range unknown {
		bound += mostOfRow(pot, row, constituent.Must(id)) // NaN stays NaN
	}
	return bound, unknown
}

// mostOfRow is the bound of a constituent in a row, as far as its totals allow.
func mostOfRow(pot *ledger.Pot, row int, c *constituent.Constituent) float64 {
	central := func(id constituent.ID) float64 {
		sum := 0.0
		for _, col := range pot.Columns.Below(id) {
			sum += pot.Cell(row, col)[0]
		}
		return sum
	}
	own, bounds := central(c.ID), pot.Bounds(row)
	weighs := slices.ContainsFunc(pot.Columns.Below(constituent.Mass), func(col int) bool { return pot.Cell(row, col)[0] != 0 })
	if !weighs { // what a step made of another row, and weighs there
		return bounds[c.Order]
	}
	most := own + bounds[c.Order]
	for up := c.Parent; up != ""; up = constituent.Must(up).Parent {
		most = lower(most, central(up)+bounds[constituent.Must(up).Order])
	}
	return max(most-own, 0)
}
