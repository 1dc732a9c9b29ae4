package ledger

import (
	"sync"

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
	ens     estimate.Ensemble
	columns *Columns
	drawn   map[*food.Profile]Cells
	shared  map[constituent.ID]func() []float64 // what class defaults of a constituent have in common
}

// NewDrawer makes a drawer of columns for a run. What it draws is written into the run's
// journal, in grams per gram and before the mass is closed.
func NewDrawer(ens estimate.Ensemble, columns *Columns) *Drawer {
	d := &Drawer{ens: ens, columns: columns, drawn: map[*food.Profile]Cells{}, shared: map[constituent.ID]func() []float64{}}
	for _, c := range constituent.All() { // totals too, which have no column
		d.shared[c.ID] = sync.OnceValue(func() []float64 { return d.class(c.ID) })
	}
	return d
}

// With gives a drawer of the same columns for other draws.
func (d *Drawer) With(ens estimate.Ensemble) *Drawer { return NewDrawer(ens, d.columns) }

// NewPot makes an empty pot for what is drawn here.
func (d *Drawer) NewPot() *Pot { return New(d.columns, d.ens.N) }

// Draw draws foods side by side, so that PerGram finds them drawn. With a journal,
// which wants them one after the other, it does nothing.
func (d *Drawer) Draw(profiles []*food.Profile) {
	if d.ens.Journal != nil {
		return
	}
	drawn := make([]Cells, len(profiles))
	var side sync.WaitGroup
	for i, p := range profiles {
		side.Go(func() { drawn[i] = d.draw(p) })
	}
	side.Wait()
	for i, p := range profiles {
		d.drawn[p] = drawn[i]
	}
}

// PerGram gives the composition of a food in grams per gram, closed so that the
// mass-additive columns of every draw add up to one gram.
func (d *Drawer) PerGram(profile *food.Profile) Cells {
	cells, ok := d.drawn[profile]
	if !ok {
		cells = d.draw(profile)
		d.drawn[profile] = cells
	}
	return cells
}

func (d *Drawer) draw(profile *food.Profile) Cells {
	list := d.columns.List
	cells := newCells(len(list), d.ens.N, func(i int) bool {
		cell := profile.Cells[list[i].Order]
		return cell.Known && cell.Amount != 0
	})
	for i, c := range list {
		if cells[i] == nil {
			continue
		}
		d.input(c, profile.Cells[c.Order]).Fill(cells[i])
		if most := profile.Cells[c.Order].Most; most > 0 {
			for j, x := range cells[i] {
				cells[i][j] = min(x, most)
			}
		}
		d.write(profile, c, cells[i])
	}
	for _, t := range profile.Totals {
		d.total(profile, t, cells)
	}
	if yield, inHand := profile.Yield(); inHand {
		d.yield(yield, cells)
	}
	d.close(cells)
	d.addedSugar(profile, cells)
	return cells
}

// addedSugar makes added sugars the food's added share of its drawn sugars.
func (d *Drawer) addedSugar(profile *food.Profile, cells Cells) {
	at := d.columns.At(constituent.AddedSugar)
	if at < 0 || !food.Stated(profile.AddedShare) {
		return
	}
	cells[at] = nil
	if profile.AddedShare == 0 {
		return
	}
	added := make([]float64, d.ens.N)
	for _, col := range d.columns.Below(constituent.Sugar) {
		for i, x := range cells[col] {
			added[i] += profile.AddedShare * x
		}
	}
	cells[at] = added
}

// input is the distribution of a cell. Its stream belongs to the source row, so
// that one measurement used by two foods draws alike.
func (d *Drawer) input(c *constituent.Constituent, cell food.Cell) estimate.Input {
	in := estimate.Input{Central: cell.Amount, Shape: estimate.Lognormal, SD: cell.SD, Tail: cell.Tail}
	switch {
	case cell.Apart > 0:
		in.SD = cell.Amount * cell.Apart
	case cell.Exact():
		in.Shape = estimate.Exact
		return in
	case cell.Limit > 0:
		in.Shape, in.High = estimate.Uniform, cell.Limit
	case cell.Class:
		in.Shared, in.Rho = d.shared[c.ID](), classRho
	}
	in.Stream = d.ens.Stream("value", cell.Row, string(c.ID))
	return in
}

func (d *Drawer) class(id constituent.ID) []float64 {
	z := make([]float64, d.ens.N-1)
	d.ens.Stream("class", string(id)).Normals(z)
	return z
}

// close scales the mass-additive columns of each draw to one gram.
func (d *Drawer) close(cells Cells) {
	sum := make([]float64, d.ens.N)
	mass := d.columns.mass()
	for _, col := range mass {
		for i, x := range cells[col] {
			sum[i] += x
		}
	}
	for _, col := range mass {
		cell := cells[col]
		for i := range cell {
			// guard: 100 g are 100 g
			if sum[i] > 0 {
				cell[i] /= sum[i]
			}
		}
	}
}

// write puts a column that was drawn into the journal.
func (d *Drawer) write(profile *food.Profile, c *constituent.Constituent, col []float64) {
	if d.ens.Journal != nil {
		d.ens.Journal.Write(estimate.Tables, c.Name+" of "+profile.Food.ID.String(), col)
	}
}
