package ledger

import (
	"math"

	"sipsum/internal/constituent"
)

// Model tells which share of a constituent of a row stays in the pot.
type Model interface {
	// Share writes the share that stays, one number a draw from draw 0 on, for
	// as many draws as share is long. For a parent, which has no column, it is
	// asked for the treatment of the parent's bound, at draw 0 only.
	Share(row Row, c *constituent.Constituent, share []float64)
}

// Lost is what a step took out of the pot, at central values.
type Lost struct {
	Grams []float64 // by vocabulary order
}

// Mass gives the mass that was lost, in grams.
func (l Lost) Mass() float64 {
	sum := 0.0
	if l.Grams == nil { // nothing
		return sum
	}
	for _, leaf := range constituent.Sums().Leaves(constituent.Mass) {
		sum += l.Grams[leaf.Order]
	}
	return sum
}

// Apply keeps the model's share of everything and gives what was lost.
func (p *Pot) Apply(m Model) Lost {
	lost := Lost{Grams: make([]float64, len(constituent.All()))}
	share := make([]float64, p.N)
	for row := range p.Rows {
		for col, c := range p.Columns.List {
			cell := p.cells[row][col]
			if cell == nil {
				continue
			}
			m.Share(p.Rows[row], c, share)
			lost.Grams[c.Order] += cell[0] * (1 - share[0])
			for d, s := range share {
				cell[d] *= s
			}
		}
		bounds := p.Bounds(row)
		for _, c := range constituent.All() {
			if b := bounds[c.Order]; b != 0 && !math.IsNaN(b) {
				m.Share(p.Rows[row], c, share[:1])
				bounds[c.Order] = b * share[0]
			}
		}
		keepTraced(p.traced[row], p.Rows[row], m, share)
		p.Rows[row].Modelled = true
	}
	return lost
}

// Plus adds up what two pots have lost.
func (l Lost) Plus(other Lost) Lost {
	sum := Lost{Grams: make([]float64, len(l.Grams))}
	for i, g := range l.Grams {
		sum.Grams[i] = g + other.Grams[i]
	}
	return sum
}
