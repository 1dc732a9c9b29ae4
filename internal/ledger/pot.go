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

	cells  []float64 // grams
	bounds []float64 // grams, by vocabulary order; 0 known, NaN unbounded
}

// New makes an empty pot.
func New(columns *Columns, n int) *Pot { return &Pot{Columns: columns, N: n} }

// Cell gives the column of draws of one constituent of one row, in grams. The
// slice is the ledger's own.
func (p *Pot) Cell(row, col int) []float64 {
	at := (row*len(p.Columns.List) + col) * p.N
	return p.cells[at : at+p.N : at+p.N]
}

// Bounds gives, by vocabulary order, the most that each unknown constituent of
// a row could be.
func (p *Pot) Bounds(row int) []float64 {
	n := len(constituent.All())
	return p.bounds[row*n : (row+1)*n : (row+1)*n]
}

func (p *Pot) grow(row Row) int {
	p.Rows = append(p.Rows, row)
	p.cells = append(p.cells, make([]float64, len(p.Columns.List)*p.N)...)
	p.bounds = append(p.bounds, make([]float64, len(constituent.All()))...)
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
	for i, from := range other.Rows {
		from.Path = append([]string{name}, from.Path...)
		row := p.grow(from)
		for col := range p.Columns.List {
			cell, source := p.Cell(row, col), other.Cell(i, col)
			for d, f := range factor {
				cell[d] = source[d] * f
			}
		}
		bounds := p.Bounds(row)
		for k, b := range other.Bounds(i) {
			bounds[k] = b * factor[0]
		}
	}
}

// Clone copies the pot.
func (p *Pot) Clone() *Pot {
	c := *p
	c.Rows = append([]Row(nil), p.Rows...)
	c.cells = append([]float64(nil), p.cells...)
	c.bounds = append([]float64(nil), p.bounds...)
	return &c
}

// Scaled gives a copy in which everything is times factor.
func (p *Pot) Scaled(factor []float64) *Pot {
	c := p.Clone()
	for row := range c.Rows {
		for col := range c.Columns.List {
			for d, f := range factor {
				c.Cell(row, col)[d] *= f
			}
		}
		for k := range c.Bounds(row) {
			c.Bounds(row)[k] *= factor[0]
		}
	}
	return c
}

// Copy adds a row of another pot as it is.
func (p *Pot) Copy(other *Pot, row int) {
	at := p.grow(other.Rows[row])
	for col := range p.Columns.List {
		copy(p.Cell(at, col), other.Cell(row, col))
	}
	copy(p.Bounds(at), other.Bounds(row))
}
