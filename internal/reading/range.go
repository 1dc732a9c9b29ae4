package reading

import (
	"math"
	"slices"

	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// kept is what a pot held before it was read.
type kept struct {
	cells  [][][]float64 // grams, by row, column and draw
	held   bool          // something would have left its range
	causes causes        // of what the recipe does not explain
}

// keepCells remembers a pot; nil if nobody has read it.
func keepCells(pot *ledger.Pot, read bool) *kept {
	if !read {
		return nil
	}
	k := &kept{}
	for row := range pot.Rows {
		cells := make([][]float64, len(pot.Columns.List))
		for col := range cells {
			if pot.Has(row, col) {
				cells[col] = slices.Clone(pot.Cell(row, col))
			}
		}
		k.cells = append(k.cells, cells)
	}
	return k
}

// hold keeps everything but water within its own range: grams in the pot of each
// constituent of each row, of each constituent and of each sum. Its range is that of its
// draws before the reading, without the outermost on either side; a draw that was beyond
// it may stay where it was. What an update moves beyond, which takes a distribution with
// short tails or a reading that bends the logarithms, comes back to the end of the range.
func (k *kept) hold(pot *ledger.Pot) {
	for row := range pot.Rows {
		for col, c := range pot.Columns.List {
			if c.ID != constituent.Water {
				k.holdSum(pot, []cell{{row, col}})
			}
		}
	}
	for _, c := range constituent.All() {
		if c.ID == constituent.Water || c.ID == constituent.Mass {
			continue
		}
		var cells []cell
		for _, col := range pot.Columns.Below(c.ID) {
			for row := range pot.Rows {
				cells = append(cells, cell{row, col})
			}
		}
		if len(cells) > 1 {
			k.holdSum(pot, cells)
		}
	}
}

// cell is a place in a pot.
type cell struct{ row, col int }

// holdSum takes the move of a sum back, by the same share in each of its cells, as far as
// it leaves its range.
func (k *kept) holdSum(pot *ledger.Pot, cells []cell) {
	before, now := make([]float64, pot.N), make([]float64, pot.N)
	moved := false
	cells = slices.DeleteFunc(cells, func(c cell) bool { return k.cells[c.row][c.col] == nil })
	for _, c := range cells {
		was, is := k.cells[c.row][c.col], pot.Cell(c.row, c.col)
		for d := range before {
			before[d] += was[d]
			now[d] += is[d]
			moved = moved || was[d] != is[d]
		}
	}
	if !moved {
		return
	}
	low, high := rangeOf(before)
	for d, was := range before {
		within := min(max(now[d], min(low, was)), max(high, was))
		if within == now[d] {
			continue
		}
		k.held = true
		part := (within - was) / (now[d] - was)
		for _, c := range cells {
			old, column := k.cells[c.row][c.col][d], pot.Write(c.row, c.col)
			column[d] = old + part*(column[d]-old)
		}
	}
}

// rangeOf gives the range of a column without its outermost draws; the central value is
// always within.
func rangeOf(column []float64) (low, high float64) {
	draws := slices.Clone(column[1:])
	if len(draws) == 0 {
		return column[0], column[0]
	}
	slices.Sort(draws)
	last := float64(len(draws) - 1)
	beyond := limitOf("range") * last
	low, high = draws[int(math.Ceil(beyond))], draws[int(math.Floor(last-beyond))]
	return min(low, column[0]), max(high, column[0])
}

// leastOf gives, draw by draw, what is left of a constituent at the lower end of its
// range, as a share of what the pot holds now; nil if it held none.
func (k *kept) leastOf(pot *ledger.Pot, id constituent.ID) []float64 {
	before := make([]float64, pot.N)
	for _, col := range pot.Columns.Below(id) {
		for row := range pot.Rows {
			for d, x := range k.cells[row][col] {
				before[d] += x
			}
		}
	}
	now := pot.Total(id)
	if now[0] <= 0 {
		return nil
	}
	low, _ := rangeOf(before)
	for d, x := range now {
		if x > 0 {
			now[d] = min(low/x, 1)
		}
	}
	return now
}

// spareAcids gives the share of the named acids that can be taken away before one of them
// leaves its range, draw by draw.
func (k *kept) spareAcids(pot *ledger.Pot) []float64 {
	spare := make([]float64, pot.N)
	estimate.Fill(spare, 1-closeEnough)
	limit := func(id constituent.ID) {
		for d, left := range k.leastOf(pot, id) {
			spare[d] = min(spare[d], 1-left)
		}
	}
	limit(constituent.OrganicAcids)
	for _, c := range acidity.AcidsOf() {
		limit(c.ID)
	}
	return spare
}
