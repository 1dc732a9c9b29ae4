package label

import (
	"math"

	"sipsum/internal/constituent"
)

// Facts is what a card is made of.
type Facts struct {
	ServingG  float64
	ServingMl float64 // 0 if the density is not known
	Serving   map[constituent.ID]Amount
}

// Amount is how much of a constituent is in one serving, in the unit of the
// vocabulary. A constituent that is not in the map is unknown, without a bound.
type Amount struct {
	Mean       float64 // of the known part
	WithBounds float64 // with the most that the unknown parts could be; NaN if one has no bound
	Known      bool    // false: nothing is known of it
}

// of gives the amount in a unit of mass (units in one gram), unknown if missing.
func (f Facts) of(id constituent.ID, perGram float64) Amount {
	a, ok := f.Serving[id]
	if !ok {
		return Amount{WithBounds: math.NaN()}
	}
	if !a.Known {
		a.Mean = 0
	}
	scale := perGram / constituent.Must(id).PerGram
	a.Mean *= scale
	a.WithBounds *= scale
	return a
}

// missing gives how much the unknown parts could be; NaN if nobody knows.
func (a Amount) missing() float64 {
	return max(a.WithBounds-a.Mean, 0)
}
