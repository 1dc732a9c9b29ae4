package assay

import (
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// shown gives the column of a constituent over a pot in grams, as it is
// printed. A negative rest only lets a published total and its parts both stand
// (package food): it shows as nothing, row by row, and no figure is below zero.
func shown(pot *ledger.Pot, c *constituent.Constituent) []float64 {
	if c.Kind != constituent.Rest {
		return atLeastZero(pot.Total(c.ID))
	}
	total := make([]float64, pot.N)
	for row := range pot.Rows {
		for d, x := range shownOf(pot, row, c, pot.N) {
			total[d] += x
		}
	}
	return total
}

// shownOf gives the first n numbers of a constituent's column in one row, as it
// is printed.
func shownOf(pot *ledger.Pot, row int, c *constituent.Constituent, n int) []float64 {
	part := make([]float64, n)
	for _, col := range pot.Columns.Below(c.ID) {
		if !pot.Has(row, col) {
			continue
		}
		for d, x := range pot.Cell(row, col)[:n] {
			part[d] += x
		}
	}
	if c.Kind == constituent.Rest {
		atLeastZero(part)
	}
	return part
}

func atLeastZero(col []float64) []float64 {
	for d, x := range col {
		// guard: no rest below zero
		col[d] = max(x, 0)
	}
	return col
}

// partsOf gives the central value of a constituent in grams by its parts alone:
// what a card prints, on which no total may be less than what stands below it.
func partsOf(pot *ledger.Pot, id constituent.ID) float64 {
	sum := 0.0
	for row := range pot.Rows {
		for _, col := range pot.Columns.Below(id) {
			sum += max(pot.Cell(row, col)[0], 0)
		}
	}
	return sum
}
