package label

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// Facts is what a card is made of.
type Facts struct {
	ServingG  float64
	ServingMl float64 // 0 if the density is not known

	// Serving is what one serving holds, each in the unit of the vocabulary. A constituent
	// that is not in it is unknown, without a bound.
	Serving map[constituent.ID]estimate.Amount
}

// of gives the amount in a unit of mass (units in one gram), unknown if missing.
func (f Facts) of(id constituent.ID, perGram float64) estimate.Amount {
	a, ok := f.Serving[id]
	if !ok {
		return estimate.Amount{WithBounds: math.NaN()}
	}
	if !a.Known {
		a.Mean = 0
	}
	return a.Times(perGram / constituent.Must(id).PerGram)
}
