package ledger

// Cells are amounts by column and draw. A column of which there is nothing is nil:
// most foods have less than half of what a drink has.
type Cells [][]float64

// newCells gives cells of n draws, all zero, with the columns that has tells, next
// to each other in memory.
func newCells(columns, n int, has func(col int) bool) Cells {
	some := 0
	for i := range columns {
		if has(i) {
			some++
		}
	}
	cells, slab := make(Cells, columns), make([]float64, some*n)
	for i := range cells {
		if has(i) {
			cells[i], slab = slab[:n:n], slab[n:]
		}
	}
	return cells
}

// times writes the columns of others, each draw times factor.
func (c Cells) times(others Cells, factor []float64) {
	for i, col := range c {
		if col == nil {
			continue
		}
		other, col := others[i][:len(factor)], col[:len(factor)] // one check a column, none a draw
		for d, f := range factor {
			col[d] = other[d] * f
		}
	}
}

// Has reports whether a row has anything of a column. It may be zero all the same.
func (p *Pot) Has(row, col int) bool { return p.cells[row][col] != nil }

// Cell gives the column of draws of one constituent of one row, in grams, to read:
// rows that have nothing of it share a column of zeros.
func (p *Pot) Cell(row, col int) []float64 {
	if cell := p.cells[row][col]; cell != nil {
		return cell
	}
	return p.none
}

// Write gives the column of draws of one constituent of one row, in grams, to
// change.
func (p *Pot) Write(row, col int) []float64 {
	if p.cells[row][col] == nil {
		p.cells[row][col] = make([]float64, p.N)
	}
	return p.cells[row][col]
}

// column gives a column to read: zeros where there is nothing of it.
func (c Cells) column(at, n int) []float64 {
	if c[at] != nil {
		return c[at]
	}
	return make([]float64, n)
}
