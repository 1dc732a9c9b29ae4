package ledger

import (
	"math"

	"sipsum/internal/constituent"
)

// Reaction turns one constituent into others, in the row where it stands, and
// takes up water of the whole pot. The parts weigh as much as a gram and its
// water.
type Reaction struct {
	From  constituent.ID
	Into  []Part
	Water float64 // grams of water that a gram of From takes up
}

// Part is grams of a constituent that a gram makes.
type Part struct {
	ID    constituent.ID
	Grams float64
}

// React turns a share (a column) of a constituent into others in every row. A
// draw in which the pot has too little water turns only what its water allows.
// What is unknown turns too: the bound of From becomes bounds of its products.
func (p *Pot) React(r Reaction, share []float64) {
	if from := p.Columns.At(r.From); from >= 0 {
		share = r.wetShare(p, from, share)
		for row := range p.Rows {
			r.turn(p, row, from, share)
		}
	}
	uptake := r.mayTakeUp(p, share[0])
	for row := range p.Rows {
		r.growTotals(p, row, share[0], uptake)
		r.moveBounds(p.Bounds(row), share[0])
		p.Rows[row].Modelled = true
	}
}

// mayTakeUp is the water that a gram of an unknown From takes up, as far as the pot has any.
func (r Reaction) mayTakeUp(p *Pot, share float64) float64 {
	unknown, _ := p.Bound(r.From)
	if want, water := unknown*share*r.Water, p.Central(constituent.Water); want > water {
		return r.Water * water / want
	}
	return r.Water
}

// wetShare takes the water out of the pot and gives the share that it allows.
func (r Reaction) wetShare(p *Pot, from int, share []float64) []float64 {
	want, water := make([]float64, p.N), p.Total(constituent.Water)
	for row := range p.Rows {
		for d, x := range p.cells[row][from] {
			want[d] += x * share[d] * r.Water
		}
	}
	allowed, left := make([]float64, p.N), make([]float64, p.N)
	for d, s := range share {
		allowed[d], left[d] = s, 1
		if want[d] > water[d] {
			allowed[d] *= water[d] / want[d]
			want[d] = water[d]
		}
		if water[d] > 0 {
			left[d] = max(1-want[d]/water[d], 0)
		}
	}
	col := p.Columns.At(constituent.Water)
	for row := range p.Rows {
		if p.Has(row, col) {
			cell := p.Write(row, col)
			for d, s := range left {
				cell[d] *= s
			}
		}
	}
	return allowed
}

// turn turns a share of From into its products in one row.
func (r Reaction) turn(p *Pot, row, from int, share []float64) {
	if !p.Has(row, from) {
		return
	}
	cell := p.Write(row, from)
	for _, part := range r.Into {
		made := p.Write(row, p.Columns.At(part.ID))
		for d, x := range cell {
			made[d] += x * share[d] * part.Grams
		}
	}
	for d, s := range share {
		cell[d] *= 1 - s
	}
}

// growTotals lets what From is part of grow by the water that an unknown From may take up,
// whether the total is known or not: there is no more of From than of it.
func (r Reaction) growTotals(p *Pot, row int, share, uptake float64) {
	from, bounds := constituent.Must(r.From), p.Bounds(row)
	if bounds[from.Order] == 0 {
		return
	}
	for up := from.Parent; up != "" && up != constituent.Mass; up = constituent.Must(up).Parent {
		total := &bounds[constituent.Must(up).Order]
		unknown := *total
		for _, col := range p.Columns.Below(up) {
			unknown += p.Cell(row, col)[0]
		}
		if b := bounds[from.Order]; !(b > unknown) && !math.IsNaN(b) { // unknown may have no bound
			unknown = b
		}
		*total += unknown * share * uptake
	}
}

// moveBounds moves the bound of From to its products, and to the totals that From was no
// part of.
func (r Reaction) moveBounds(bounds []float64, share float64) {
	from := constituent.Must(r.From)
	b := bounds[from.Order]
	if b == 0 || share == 0 {
		return
	}
	bounds[from.Order] = b * (1 - share)
	for _, part := range r.Into {
		made := b * share * part.Grams // NaN stays NaN
		bounds[constituent.Must(part.ID).Order] += made
		for up := constituent.Must(part.ID).Parent; up != "" && up != constituent.Mass && !partOf(from, up); up = constituent.Must(up).Parent {
			bounds[constituent.Must(up).Order] += made
		}
	}
}

// partOf reports whether a constituent is part of another.
func partOf(c *constituent.Constituent, of constituent.ID) bool {
	for up := c.Parent; up != ""; up = constituent.Must(up).Parent {
		if up == of {
			return true
		}
	}
	return false
}

// Forget makes what a row has of a rider unknown: it could still be all there,
// or none of it.
func (p *Pot) Forget(row int, id constituent.ID) {
	c := constituent.Must(id)
	if c.Kind != constituent.Rider {
		panic("ledger: the mass of " + string(id) + " cannot be forgotten")
	}
	col := p.Columns.at[c.Order]
	if col < 0 {
		return
	}
	p.Bounds(row)[c.Order] += p.Cell(row, col)[0]
	p.cells[row][col] = nil
}
