package claims

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// room is the most that a row can hold of what it does not know of a constituent where no table bounds it,
// draw by draw in grams: what is in a food weighs no more than the food, less what else is known to be there.
// It is far more than anybody would expect, and only decides what hangs on nothing less. +Inf of what has no mass.
func room(pot *ledger.Pot, row int, c *constituent.Constituent) []float64 {
	if c.PerGram == 0 || c.Kind == constituent.Figure {
		return estimate.Constant(pot.N, math.Inf(1))
	}
	rows := []int{row}
	if r := pot.Rows[row]; r.Modelled || pot.CentralOf(row, constituent.Mass) == 0 { // a step may have made it of any row
		rows = rows[:0]
		for i := range pot.Rows {
			rows = append(rows, i)
		}
	}
	left := make([]float64, pot.N)
	for _, row := range rows {
		for d, x := range pot.Of(row, constituent.Mass) {
			left[d] += x
		}
		for col, other := range pot.Columns.List {
			if !apart(c, other) {
				continue
			}
			for d, x := range pot.Cell(row, col) {
				left[d] -= x
			}
		}
	}
	for d := range left {
		left[d] = max(left[d], 0)
	}
	return left
}

// none of these holds anything of another constituent.
var alone = []constituent.ID{constituent.Water, constituent.Alcohol, constituent.CarbonDioxide}

// apart tells whether what is known of another constituent leaves no room for one in it. A rest may hold
// anything; what rides on the mass is counted in it, but not in water, alcohol and gas; ash keeps
// something of the acids that were burnt.
func apart(c, other *constituent.Constituent) bool {
	if c.Kind == constituent.Rider {
		return slices.Contains(alone, other.ID)
	}
	return other.Kind == constituent.Leaf && other.Parent != "" && other.ID != constituent.Ash
}
