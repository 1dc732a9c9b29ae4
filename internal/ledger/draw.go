package ledger

import (
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// classRho is how much of its randomness a class default shares with the same
// constituent of other foods (design: class defaults of one constituent
// correlate 0.5 across foods).
const classRho = 0.5

// Drawer draws foods. It keeps what it has drawn, per gram, so that a food used
// twice is drawn once and only new amounts need new work.
type Drawer struct {
	seed    uint64
	n       int
	columns *Columns
	drawn   map[*food.Profile][]float64
	shared  map[constituent.ID][]float64

	// Trace, if set, is shown every column that is drawn, in grams per gram and
	// before the mass is closed. It may not keep it.
	Trace func(profile *food.Profile, c *constituent.Constituent, col []float64)
}

// NewDrawer makes a drawer for columns of n numbers (draws + 1).
func NewDrawer(seed uint64, n int, columns *Columns) *Drawer {
	return &Drawer{seed: seed, n: n, columns: columns, drawn: map[*food.Profile][]float64{}, shared: map[constituent.ID][]float64{}}
}

// PerGram gives the composition of a food in grams per gram, column by column,
// each n numbers long, closed so that the mass-additive columns of every draw
// add up to one gram.
func (d *Drawer) PerGram(profile *food.Profile) []float64 {
	if done, ok := d.drawn[profile]; ok {
		return done
	}
	slab := make([]float64, len(d.columns.List)*d.n)
	for i, c := range d.columns.List {
		if cell := profile.Cells[c.Order]; cell.Known && cell.Amount != 0 {
			col := slab[i*d.n : (i+1)*d.n]
			d.input(c, cell).Fill(col)
			if d.Trace != nil {
				d.Trace(profile, c, col)
			}
		}
	}
	d.close(slab)
	d.addedSugar(profile, slab)
	d.drawn[profile] = slab
	return slab
}

// addedSugar makes added sugars the food's added share of its drawn sugars.
func (d *Drawer) addedSugar(profile *food.Profile, slab []float64) {
	at := d.columns.At(constituent.AddedSugar)
	if at < 0 || !food.Stated(profile.AddedShare) {
		return
	}
	added := slab[at*d.n : (at+1)*d.n]
	clear(added)
	for _, col := range d.columns.Below(constituent.Sugar) {
		for i, x := range slab[col*d.n : (col+1)*d.n] {
			added[i] += profile.AddedShare * x
		}
	}
}

// input is the distribution of a cell. Its stream belongs to the source row, so
// that one measurement used by two foods draws alike.
func (d *Drawer) input(c *constituent.Constituent, cell food.Cell) estimate.Input {
	in := estimate.Input{Central: cell.Amount, Shape: estimate.Lognormal, SD: cell.SD}
	switch {
	case cell.Exact():
		in.Shape = estimate.Exact
		return in
	case cell.Limit > 0:
		in.Shape, in.High = estimate.Uniform, cell.Limit
	case cell.Class:
		in.Shared, in.Rho = d.class(c.ID), classRho
	}
	in.Stream = estimate.KeyOf(d.seed, "value", cell.Row, string(c.ID))
	return in
}

func (d *Drawer) class(id constituent.ID) []float64 {
	z, ok := d.shared[id]
	if !ok {
		z = make([]float64, d.n-1)
		estimate.KeyOf(d.seed, "class", string(id)).Normals(z)
		d.shared[id] = z
	}
	return z
}

// close scales the mass-additive columns of each draw to one gram.
func (d *Drawer) close(slab []float64) {
	sum := make([]float64, d.n)
	mass := d.columns.mass()
	for _, col := range mass {
		for i, x := range slab[col*d.n : (col+1)*d.n] {
			sum[i] += x
		}
	}
	for _, col := range mass {
		cell := slab[col*d.n : (col+1)*d.n]
		for i := range cell {
			if sum[i] > 0 {
				cell[i] /= sum[i]
			}
		}
	}
}
