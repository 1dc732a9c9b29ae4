package ledger

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// Row is one occurrence of an ingredient.
type Row struct {
	Path     []string // components it came through, outermost first
	Line     string   // the stable path of its line in the drink file
	Profile  *food.Profile
	Modelled bool // a step's model, and not only mixing, has changed it
}

// Pot is the state of a preparation: what is in it, from which ingredients.
type Pot struct {
	Columns *Columns
	N       int // length of a column: draws + 1
	Rows    []Row

	cells  [][]float64 // by row: grams, index column·N + draw
	bounds [][]float64 // by row: grams, by vocabulary order; 0 known, NaN unbounded
}

// New makes an empty pot.
func New(columns *Columns, n int) *Pot { return &Pot{Columns: columns, N: n} }

// Cell gives the column of draws of one constituent of one row, in grams. The
// slice is the ledger's own.
func (p *Pot) Cell(row, col int) []float64 {
	at := col * p.N
	return p.cells[row][at : at+p.N : at+p.N]
}

// Bounds gives, by vocabulary order, the most that each unknown constituent of
// a row could be.
func (p *Pot) Bounds(row int) []float64 { return p.bounds[row] }

func (p *Pot) grow(row Row) int {
	p.Rows = append(p.Rows, row)
	p.cells = append(p.cells, make([]float64, len(p.Columns.List)*p.N))
	p.bounds = append(p.bounds, make([]float64, len(constituent.All())))
	return len(p.Rows) - 1
}

// Pour adds an ingredient: its composition per gram (from Draw) times the
// column of its mass in grams.
func (p *Pot) Pour(profile *food.Profile, perGram []float64, grams []float64, line string) {
	row := p.grow(Row{Line: line, Profile: profile})
	for col := range p.Columns.List {
		cell, each := p.Cell(row, col), perGram[col*p.N:(col+1)*p.N]
		for d, g := range grams {
			cell[d] = each[d] * g
		}
	}
	bounds := p.Bounds(row)
	for _, c := range constituent.All() {
		switch cell := profile.Cells[c.Order]; {
		case cell.Known || c.Kind == constituent.Figure || c.Kind == constituent.Rest:
		case food.Stated(cell.Bound):
			bounds[c.Order] = cell.Bound * grams[0]
		default:
			bounds[c.Order] = math.NaN()
		}
	}
}

// Mix adds the contents of another pot, each draw times factor, under a
// component's name.
func (p *Pot) Mix(other *Pot, factor []float64, name string) {
	for i, r := range other.Rows {
		r.Path = append([]string{name}, r.Path...)
		p.add(r, other, i, factor)
	}
}

// Join adds the contents of another pot as they stand, as if they had been
// poured here. The other pot may not be used afterwards.
func (p *Pot) Join(other *Pot) {
	p.Rows = append(p.Rows, other.Rows...)
	p.cells = append(p.cells, other.cells...)
	p.bounds = append(p.bounds, other.bounds...)
}

// Scale makes everything times factor.
func (p *Pot) Scale(factor []float64) {
	for row := range p.Rows {
		for col := range p.Columns.List {
			cell := p.Cell(row, col)
			for d, f := range factor {
				cell[d] *= f
			}
		}
		bounds := p.Bounds(row)
		for k := range bounds {
			bounds[k] *= factor[0] // NaN stays NaN
		}
	}
}

// add copies a row of another pot, each draw times factor.
func (p *Pot) add(as Row, other *Pot, from int, factor []float64) {
	row := p.grow(as)
	for col := range p.Columns.List {
		cell, source := p.Cell(row, col), other.Cell(from, col)
		for d, f := range factor {
			cell[d] = source[d] * f
		}
	}
	bounds := p.Bounds(row)
	for k, b := range other.Bounds(from) {
		bounds[k] = b * factor[0]
	}
}

// Only gives the rows for which keep is true. The columns are shared, not
// copied: neither pot may be changed afterwards.
func (p *Pot) Only(keep func(row int) bool) *Pot {
	c := New(p.Columns, p.N)
	for i, r := range p.Rows {
		if keep(i) {
			c.Rows, c.cells, c.bounds = append(c.Rows, r), append(c.cells, p.cells[i]), append(c.bounds, p.bounds[i])
		}
	}
	return c
}
