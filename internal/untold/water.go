package untold

import (
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
)

// Water is the mass of a pot that may be water or anything else.
type Water struct {
	pot          *ledger.Pot
	water, other int         // columns
	Foods        []string    // whose it is
	mass         [][]float64 // by row; nil where nothing is open
	wet, rest    [][]float64 // by row: water and the rest, as they were
	bound        []float64   // by row: of the water
	share        []float64   // of it that is water
}

// WaterOf gives what is open of a pot; nil where too little is open to be told, or where some of it may be alcohol.
func WaterOf(pot *ledger.Pot) *Water {
	if !strings.HasPrefix(liquid.TooDry(pot), liquid.Unstated) {
		return nil
	}
	o := &Water{pot: pot, water: pot.Columns.At(constituent.Water), other: pot.Columns.At(constituent.MassOther), share: make([]float64, pot.N)}
	for row, r := range pot.Rows {
		mass := ledger.OpenWater(pot, row)
		if ledger.OpenAlcohol(pot, row) != nil {
			return nil
		}
		if mass != nil {
			o.Foods = append(o.Foods, r.Profile.Food.ID.String())
		}
		o.mass, o.bound = append(o.mass, mass), append(o.bound, pot.Bounds(row)[constituent.Must(constituent.Water).Order])
		o.wet, o.rest = append(o.wet, slices.Clone(pot.Cell(row, o.water))), append(o.rest, slices.Clone(pot.Cell(row, o.other)))
	}
	return o
}

// Solve finds the share that reads what is wanted, draw by draw; where none does at central values
// all is as it was, and it gives false.
func (o *Water) Solve(read func() []float64, want []float64) bool {
	const halvings, met = 45, 1e-6
	o.state(func(int) float64 { return 0 })
	low, high := make([]float64, len(want)), estimate.Constant(len(want), 1)
	for range halvings {
		for d := range o.share {
			o.share[d] = (low[d] + high[d]) / 2
		}
		o.set()
		for d, is := range read() { // more water, less reading
			if is > want[d] {
				low[d] = o.share[d]
			} else {
				high[d] = o.share[d]
			}
		}
	}
	if off := read()[0]/want[0] - 1; off > met || off < -met {
		clear(o.share)
		o.set()
		o.state(func(row int) float64 { return o.bound[row] })
		return false
	}
	o.settle()
	return true
}

// state says how much water the rows may hold beyond what they do.
func (o *Water) state(bound func(row int) float64) {
	for row, mass := range o.mass {
		if mass != nil {
			o.pot.Bounds(row)[constituent.Must(constituent.Water).Order] = bound(row)
		}
	}
}

// set makes the share of what is open water.
func (o *Water) set() {
	for row, mass := range o.mass {
		if mass == nil {
			continue
		}
		wet, rest := o.pot.Write(row, o.water), o.pot.Write(row, o.other)
		for d, x := range mass {
			wet[d] = o.wet[row][d] + o.share[d]*x
			rest[d] = o.rest[row][d] - o.share[d]*x
		}
	}
}

// settle lets nothing that is unknown of a row be more than what is left of it.
func (o *Water) settle() {
	for row, mass := range o.mass {
		if mass == nil {
			continue
		}
		left, bounds := estimate.Summarise(o.pot.Of(row, constituent.MassOther)).High, o.pot.Bounds(row)
		for _, c := range constituent.All() {
			if c.PerGram > 0 && bounds[c.Order] > left*c.PerGram {
				bounds[c.Order] = left * c.PerGram
			}
		}
		ledger.Change(o.pot, row)
	}
}

// Told gives the water that a reading has told, in grams at central values.
func (o *Water) Told() (grams float64) {
	for _, mass := range o.mass {
		if mass != nil {
			grams += o.share[0] * mass[0]
		}
	}
	return grams
}
