package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// Caramelise turns a share (a column) of every sugar into what it becomes when
// it burns. The mass stays, as carbohydrate without a name (CHOCDF-other): what
// caramel consists of cannot be calculated.
//
// Limits: the water and the vapours that leave are not known and stay in the
// mass; weigh the pot (measured) to take them out. The acids that form are
// unknown, each up to the sugar lost. The sugar that is left counts as unburnt and
// unsplit, so sucrose is the most that it can be.
func Caramelise(pot *ledger.Pot, loss []float64) Outcome {
	lost := make([]float64, len(pot.Rows))
	keepAdded(pot, func() {
		for _, sugar := range constituent.Sums().Leaves(constituent.Sugar) {
			if at := pot.Columns.At(sugar.ID); at >= 0 {
				for row := range pot.Rows {
					lost[row] += pot.Cell(row, at)[0] * loss[0]
				}
			}
			burn := ledger.Reaction{From: sugar.ID, Into: []ledger.Part{{ID: burnt, Grams: 1}}}
			pot.React(burn, loss)
		}
	})
	for row := range pot.Rows {
		for _, id := range burntAcids {
			pot.Bounds(row)[constituent.Must(id).Order] += lost[row] // NaN stays NaN
		}
		unnamed(pot, row)
	}
	var out Outcome
	out.note("%.3g g of sugar become caramel, whose parts are not known: they count as carbohydrate without a name, its acids as unknown", sum(lost))
	return out
}

// burnt is where burnt sugar goes; burntAcids are the acids named for caramel
// and the total that they belong to.
var (
	burnt      = constituent.RestOf(constituent.Carbohydrate)
	burntAcids = []constituent.ID{"FORAC", "ACEAC", constituent.OrganicAcids}
)

// unnamed drops the bound of a rest: rests have none, their mass is known or
// bounded under the total they belong to.
func unnamed(pot *ledger.Pot, row int) { pot.Bounds(row)[constituent.Must(burnt).Order] = 0 }

func sum(list []float64) float64 {
	total := 0.0
	for _, x := range list {
		total += x
	}
	return total
}
