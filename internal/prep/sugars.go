package prep

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// hydrolysis gives the reaction of a disaccharide with water, by molar mass:
// a gram of C12H22O11 takes up 0.0526 g of water and gives equal masses of two
// hexoses.
func hydrolysis(disaccharide, one, other constituent.ID) ledger.Reaction {
	m := molarMass(disaccharide)
	return ledger.Reaction{
		From:  disaccharide,
		Into:  []ledger.Part{{ID: one, Grams: molarMass(one) / m}, {ID: other, Grams: molarMass(other) / m}},
		Water: molarMass(constituent.Water) / m,
	}
}

func molarMass(id constituent.ID) float64 { return constituent.Must(id).Molar }

// splitSugar turns a share (a column) of a disaccharide. Sugars that were added stay
// added. It is an error if the pot has too little water at central values.
func splitSugar(pot *ledger.Pot, r ledger.Reaction, share []float64) error {
	if need, water := pot.Central(r.From)*share[0]*r.Water, pot.Central(constituent.Water); need > water {
		return impossible("splitting takes up %.3g g of water, but the pot holds %.3g g", need, water)
	}
	keepAdded(pot, func() { pot.React(r, share) })
	return nil
}

// keepAdded lets a change of the sugars carry their added part along: in each
// row the added sugars change as the sugars do.
func keepAdded(pot *ledger.Pot, change func()) {
	added := pot.Columns.At(constituent.AddedSugar)
	before := make([][]float64, len(pot.Rows))
	for row := range pot.Rows {
		before[row] = pot.Of(row, constituent.Sugar)
	}
	change()
	order := constituent.Must(constituent.AddedSugar).Order
	for row := range pot.Rows {
		after := pot.Of(row, constituent.Sugar)
		for d, b := range before[row] {
			if b <= 0 {
				continue
			}
			ratio := after[d] / b
			if added >= 0 && pot.Has(row, added) {
				pot.Write(row, added)[d] *= ratio
			}
			if d == 0 && !math.IsNaN(pot.Bounds(row)[order]) {
				pot.Bounds(row)[order] *= ratio
			}
		}
	}
}
