package ledger

import "sipsum/internal/constituent"

// WaterGone is the tracer of the water that has left a juice, in grams: so much would bring
// the sugars that it has to what they were in before. It goes with them.
type WaterGone struct{}

// As is a sugar: what is dissolved goes alike.
func (WaterGone) As() constituent.ID { return constituent.Glucose }

// Dry notes that so many grams of water have left a row of juice; below zero they have come
// back. Of other foods nobody asks.
func Dry(p *Pot, row int, grams []float64) {
	if !p.Rows[row].Profile.Food.Facts().Juice {
		return
	}
	gone := p.Carry(row, WaterGone{})
	for d, x := range grams {
		gone[d] = max(gone[d]+x, 0)
	}
}
