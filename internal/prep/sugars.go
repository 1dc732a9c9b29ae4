package prep

import (
	"math"
	"slices"

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
// added. It is an error if the pot has too little water at central values; that there is none
// of it is said.
func splitSugar(pot *ledger.Pot, r ledger.Reaction, share []float64) (out Outcome, err error) {
	if err := wetEnough(pot, r, share); err != nil {
		return out, err
	}
	if _, unknown := pot.Bound(r.From); pot.Central(r.From) <= 0 && len(unknown) == 0 {
		out.note("nothing here holds %s: nothing is changed", constituent.Must(r.From).Name)
	}
	KeepAdded(pot, func() { pot.React(r, share) })
	return out, nil
}

// wetEnough tells whether a pot has the water that a reaction takes up, at central values.
func wetEnough(pot *ledger.Pot, r ledger.Reaction, share []float64) error {
	if need, water := pot.Central(r.From)*share[0]*r.Water, pot.Central(constituent.Water); need > water {
		return impossible("splitting takes up %.3g g of water, but the pot holds %.3g g", need, water)
	}
	return nil
}

// apply keeps the model's share of everything, and gives what was lost. Added sugars go as
// the sugars that they are part of.
func apply(pot *ledger.Pot, m ledger.Model) (lost ledger.Lost) {
	added := pot.Central(constituent.AddedSugar)
	KeepAdded(pot, func() { noteWater(pot, func() { lost = pot.Apply(m) }) })
	lost.Grams[constituent.Must(constituent.AddedSugar).Order] = added - pot.Central(constituent.AddedSugar)
	return lost
}

// KeepAdded lets a change of the sugars carry their added part along: in each
// row the added sugars change as the sugars do.
func KeepAdded(pot *ledger.Pot, change func()) {
	col, order := pot.Columns.At(constituent.AddedSugar), constituent.Must(constituent.AddedSugar).Order
	sugars, added, bounds := make([][]float64, len(pot.Rows)), make([][]float64, len(pot.Rows)), make([]float64, len(pot.Rows))
	for row := range pot.Rows {
		sugars[row], bounds[row] = pot.Of(row, constituent.Sugar), pot.Bounds(row)[order]
		if col >= 0 && pot.Has(row, col) {
			added[row] = slices.Clone(pot.Cell(row, col))
		}
	}
	change()
	for row, before := range sugars {
		after := pot.Of(row, constituent.Sugar)
		for d, b := range before {
			if b <= 0 {
				continue
			}
			ratio := max(after[d], 0) / b
			if added[row] != nil {
				pot.Write(row, col)[d] = added[row][d] * ratio
			}
			if d == 0 && !math.IsNaN(bounds[row]) {
				pot.Bounds(row)[order] = bounds[row] * ratio
			}
		}
	}
}
