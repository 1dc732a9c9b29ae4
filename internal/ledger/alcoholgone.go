package ledger

import "sipsum/internal/constituent"

// AlcoholGone is the tracer of the alcohol that a pot is taken to have lost with its vapour, in
// grams: a lid, a flask or a low flame may have kept it there, and a reading tells. It stays with
// what is dissolved.
type AlcoholGone struct{}

// As is a sugar: what is dissolved goes alike.
func (AlcoholGone) As() constituent.ID { return constituent.Glucose }

// AlcoholHot is the tracer of the alcohol that has been hot where nobody counted what it lost, in
// grams: some of it may have gone, and a reading tells.
type AlcoholHot struct{}

// As is the alcohol itself.
func (AlcoholHot) As() constituent.ID { return constituent.Alcohol }

// BoilOff notes that so many grams of alcohol count as gone with the vapour of a row.
func BoilOff(p *Pot, row int, grams []float64) {
	gone := p.Carry(row, AlcoholGone{})
	for d, x := range grams {
		gone[d] = max(gone[d]+x, 0)
	}
}

// Warm notes that the alcohol of a row has been hot.
func Warm(p *Pot, row int) {
	if alcohol := p.Of(row, constituent.Alcohol); alcohol[0] > 0 {
		copy(p.Carry(row, AlcoholHot{}), alcohol)
	}
}

// OfPast reports whether a tracer tells what has left a row, and nothing of what is in it.
func OfPast(t Tracer) bool {
	switch t.(type) {
	case WaterGone, AlcoholGone, AlcoholHot:
		return true
	}
	return false
}
