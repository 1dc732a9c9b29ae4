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
	sums   []sum         // that are held
}

// sum is cells that are held together, and what they came to before the pot was read.
type sum struct {
	cells     []cell
	was       []float64
	low, high float64
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
	if k.sums == nil {
		k.sums = k.allSums(pot)
	}
	now := make([]float64, pot.N)
	for i := range k.sums {
		k.holdSum(pot, &k.sums[i], now)
	}
}

// allSums lists what is held: each cell that holds something, and each constituent of
// several.
func (k *kept) allSums(pot *ledger.Pot) []sum {
	var sums []sum
	add := func(cells []cell) {
		if cells = slices.DeleteFunc(cells, func(c cell) bool { return k.cells[c.row][c.col] == nil }); len(cells) > 0 {
			sums = append(sums, sum{cells: cells})
		}
	}
	for row := range pot.Rows {
		for col, c := range pot.Columns.List {
			if c.ID != constituent.Water {
				add([]cell{{row, col}})
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
			add(cells)
		}
	}
	return sums
}

// cell is a place in a pot.
type cell struct{ row, col int }

// holdSum takes the move of a sum back, by the same share in each of its cells, as far as
// it leaves its range.
func (k *kept) holdSum(pot *ledger.Pot, of *sum, now []float64) {
	moved := slices.ContainsFunc(of.cells, func(c cell) bool {
		return !slices.Equal(k.cells[c.row][c.col], pot.Cell(c.row, c.col))
	})
	if !moved {
		return
	}
	if of.was == nil {
		of.was = make([]float64, pot.N)
		for _, c := range of.cells {
			for d, x := range k.cells[c.row][c.col] {
				of.was[d] += x
			}
		}
		of.low, of.high = rangeOf(of.was)
	}
	clear(now)
	for _, c := range of.cells {
		for d, x := range pot.Cell(c.row, c.col) {
			now[d] += x
		}
	}
	for d, was := range of.was {
		within := min(max(now[d], min(of.low, was)), max(of.high, was))
		if within == now[d] {
			continue
		}
		k.held = true
		part := (within - was) / (now[d] - was)
		for _, c := range of.cells {
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
	last := float64(len(draws) - 1)
	beyond := limitOf("range") * last
	low, high = estimate.Smallest(draws, int(math.Ceil(beyond))), estimate.Smallest(draws, int(math.Floor(last-beyond)))
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
