package ledger

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// Row is one occurrence of an ingredient.
type Row struct {
	Path     []string // components it came through, outermost first
	Line     string   // the stable path of its line in the drink file
	Profile  *food.Profile
	Modelled bool // a step's model, and not only mixing, has changed it

	Extracted bool // what is here has been drawn out of a solid, which is no longer here
}

// Extract notes that what is in a row has been drawn out of a solid, which is no longer
// there.
func Extract(p *Pot, row int) { p.Rows[row].Extracted = true }

// Change notes that a step's model, and not only mixing, has changed a row.
func Change(p *Pot, row int) { p.Rows[row].Modelled = true }

// Pot is the state of a preparation: what is in it, from which ingredients.
type Pot struct {
	Columns *Columns
	N       int // length of a column: draws + 1
	Rows    []Row

	cells  []Cells     // by row: grams
	bounds [][]float64 // by row: grams, by vocabulary order; 0 known, NaN unbounded
	traced [][]Traced  // by row: what is dissolved and no constituent
	none   []float64   // zeros
}

// New makes an empty pot.
func New(columns *Columns, n int) *Pot {
	return &Pot{Columns: columns, N: n, none: make([]float64, n)}
}

// Bounds gives, by vocabulary order, the most that each unknown constituent of
// a row could be.
func (p *Pot) Bounds(row int) []float64 { return p.bounds[row] }

// grow adds a row of cells, each draw times factor.
func (p *Pot) grow(row Row, cells Cells, factor []float64) int {
	own := newCells(len(cells), p.N, func(col int) bool { return cells[col] != nil })
	own.times(cells, factor)
	p.Rows = append(p.Rows, row)
	p.cells = append(p.cells, own)
	p.bounds = append(p.bounds, make([]float64, len(constituent.All())))
	p.traced = append(p.traced, nil)
	return len(p.Rows) - 1
}

// Pour adds an ingredient: its composition per gram (from a Drawer) times the
// column of its mass in grams.
func (p *Pot) Pour(profile *food.Profile, perGram Cells, grams []float64, line string) {
	row := p.grow(Row{Line: line, Profile: profile}, perGram, grams)
	if profile.WaterGone > 0 {
		for d, gone := 0, p.Carry(row, WaterGone{}); d < p.N; d++ {
			gone[d] = grams[d] * profile.WaterGone
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

// Copy gives a pot that holds the same.
func (p *Pot) Copy() *Pot {
	c, same := New(p.Columns, p.N), estimate.Constant(p.N, 1)
	for i, r := range p.Rows {
		c.add(r, p, i, same)
	}
	return c
}

// Join adds the contents of another pot as they stand, as if they had been
// poured here. The other pot may not be used afterwards.
func (p *Pot) Join(other *Pot) {
	p.Rows = append(p.Rows, other.Rows...)
	p.cells = append(p.cells, other.cells...)
	p.bounds = append(p.bounds, other.bounds...)
	p.traced = append(p.traced, other.traced...)
}

// Scale makes everything times factor.
func (p *Pot) Scale(factor []float64) {
	for row, cells := range p.cells {
		cells.times(cells, factor)
		bounds := p.Bounds(row)
		for k := range bounds {
			bounds[k] *= factor[0] // NaN stays NaN
		}
		scaleTraced(p.traced[row], factor)
	}
}

// add copies a row of another pot, each draw times factor.
func (p *Pot) add(as Row, other *Pot, from int, factor []float64) {
	row := p.grow(as, other.cells[from], factor)
	bounds := p.Bounds(row)
	for k, b := range other.Bounds(from) {
		bounds[k] = b * factor[0]
	}
	p.copyTraced(row, other, from, factor)
}

// Only gives the rows for which keep is true. The columns are shared, not
// copied: neither pot may be changed afterwards.
func (p *Pot) Only(keep func(row int) bool) *Pot {
	c := &Pot{Columns: p.Columns, N: p.N, none: p.none}
	for i, r := range p.Rows {
		if keep(i) {
			c.Rows, c.cells = append(c.Rows, r), append(c.cells, p.cells[i])
			c.bounds, c.traced = append(c.bounds, p.bounds[i]), append(c.traced, p.traced[i])
		}
	}
	return c
}

// First gives the pot as it is with fewer draws: the first n numbers of every
// column. The columns are shared, not copied: neither pot may be changed afterwards.
func (p *Pot) First(n int) *Pot {
	f := &Pot{Columns: p.Columns, N: n, Rows: p.Rows, bounds: p.bounds, none: p.none[:n]}
	for row, cells := range p.cells {
		few := make(Cells, len(cells))
		for i, col := range cells {
			if col != nil {
				few[i] = col[:n:n]
			}
		}
		f.cells = append(f.cells, few)
		var traced []Traced
		for _, t := range p.traced[row] {
			traced = append(traced, Traced{t.Tracer, t.Column[:n:n]})
		}
		f.traced = append(f.traced, traced)
	}
	return f
}
