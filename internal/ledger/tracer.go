package ledger

import (
	"slices"

	"sipsum/internal/constituent"
)

// Tracer is something dissolved that a row carries beside its constituents: no part of
// the mass, of no contribution, in a unit that its owner knows. It goes through every step
// with the share of the constituent As in that row. Two tracers that are equal are one; what
// they mean is their type's affair, so that a pot needs nobody to explain it.
type Tracer interface{ As() constituent.ID }

// Traced is a tracer and its column of draws in one row.
type Traced struct {
	Tracer
	Column []float64
}

// Traced gives what a row carries beside its constituents, in the order in which it
// was put there. The columns are the ledger's own.
func (p *Pot) Traced(row int) []Traced { return p.traced[row] }

// Carry gives the column of a tracer in a row, which begins to carry it if it did
// not: then the column is zero.
func (p *Pot) Carry(row int, t Tracer) []float64 {
	for _, c := range p.traced[row] {
		if c.Tracer == t {
			return c.Column
		}
	}
	c := Traced{t, make([]float64, p.N)}
	p.traced[row] = append(p.traced[row], c)
	return c.Column
}

// Drop makes a row carry nothing beside its constituents, but for what has left it.
func (p *Pot) Drop(row int) {
	p.traced[row] = slices.DeleteFunc(slices.Clone(p.traced[row]), func(c Traced) bool { return !OfPast(c.Tracer) })
}

// Shed makes a row no longer carry a tracer.
func (p *Pot) Shed(row int, t Tracer) {
	p.traced[row] = slices.DeleteFunc(slices.Clone(p.traced[row]), func(c Traced) bool { return c.Tracer == t })
}

// Lacks reports whether a pot has nothing of a constituent, and carries nothing that goes with it.
func (p *Pot) Lacks(id constituent.ID) bool {
	if slices.Max(p.Total(id)) > 0 {
		return false
	}
	return !slices.ContainsFunc(p.traced, func(row []Traced) bool {
		return slices.ContainsFunc(row, func(t Traced) bool { return t.As() == id })
	})
}

// scaleTraced makes what a row carries times factor.
func scaleTraced(carried []Traced, factor []float64) {
	for _, t := range carried {
		for d, f := range factor {
			t.Column[d] *= f
		}
	}
}

// keepTraced keeps a model's share of what a row carries.
func keepTraced(carried []Traced, row Row, m Model, share []float64) {
	for _, t := range carried {
		m.Share(row, constituent.Must(t.As()), share)
		for d, s := range share {
			t.Column[d] *= s
		}
	}
}

// copyTraced makes a row carry what a row of another pot carries, times factor.
func (p *Pot) copyTraced(row int, other *Pot, from int, factor []float64) {
	for _, t := range other.traced[from] {
		col := p.Carry(row, t.Tracer)
		for d, f := range factor {
			col[d] = t.Column[d] * f
		}
	}
}
