package composition

import (
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// Carbohydrate by difference is what a mass leaves beside its water, protein, fat, ash,
// alcohol and carbon dioxide: 21 CFR 101.9(c)(6) and most national tables. The ledger's own
// carbohydrate is the sum of its parts, which were analysed one by one, and the mass of a food
// whose parts are published as more than 100 g has been closed; so this goes back to what the
// food's table prints, food by food:
//
//	row's mass − Σ row's amount · published / entered
//
// which is 100 − Σ published of a food as it is poured, and follows it through the steps.

// subtracted are the parts that a food must know for it, and those that count as far as they
// are known: tables leave them out of what has none.
var (
	subtracted = []constituent.ID{constituent.Water, constituent.Protein, constituent.Fat, constituent.Ash}
	leftOut    = []constituent.ID{constituent.Alcohol, constituent.CarbonDioxide}
	declared   = []constituent.ID{constituent.Sugar, constituent.Fibre, constituent.Polyols}
)

// ByDifference gives what carbohydrate by difference of a pot is made of, in grams at central
// values: the mass of the foods that know all that is subtracted, and these; the carbohydrate
// of the foods that do not, as far as it is known; and the sugars, fibre and polyols of the
// foods of which these are published as more than the difference (the lactose of milk): a
// declaration has rows for them, and none may be more than its whole.
func ByDifference(pot *ledger.Pot) map[constituent.ID]estimate.Amount {
	sum := map[constituent.ID]estimate.Amount{}
	add := func(id constituent.ID, grams, bound float64) {
		a := sum[id]
		sum[id] = estimate.Amount{Mean: a.Mean + grams, WithBounds: a.WithBounds + grams + bound, Known: true}
	}
	for row := range pot.Rows {
		mass, ok := pot.Of(row, constituent.Mass)[0], knows(pot, row)
		if !ok {
			carbohydrate := pot.Of(row, constituent.Carbohydrate)[0]
			add(constituent.Carbohydrate, carbohydrate, mostOfRow(pot, row, constituent.Must(constituent.Carbohydrate)))
			continue
		}
		rest, grams := mass, map[constituent.ID]float64{}
		for _, list := range [][]constituent.ID{subtracted, leftOut} {
			for _, id := range list {
				grams[id] = published(pot, row, id)
				rest -= grams[id]
			}
		}
		parts := 0.0
		for _, id := range declared {
			parts += pot.Of(row, id)[0]
		}
		if parts > rest {
			for _, id := range declared {
				add(id, pot.Of(row, id)[0], 0)
			}
			continue
		}
		add(constituent.Mass, mass, 0)
		for id, g := range grams {
			add(id, g, 0)
		}
	}
	return sum
}

// knows reports whether a row knows all that is subtracted. What is a substance of one
// formula has no difference: its parts are all that it is.
func knows(pot *ledger.Pot, row int) bool {
	if pot.Rows[row].Profile.Food.Chemical {
		return false
	}
	for _, id := range subtracted {
		if pot.Bounds(row)[constituent.Must(id).Order] != 0 {
			return false
		}
	}
	return true
}

// published gives a constituent of a row in the proportion in which its table prints it.
func published(pot *ledger.Pot, row int, id constituent.ID) float64 {
	profile, grams := pot.Rows[row].Profile, pot.Of(row, id)[0]
	value, ok := profile.Food.Value(id)
	entered := profile.Cell(id).Amount
	if !ok || !food.Stated(value.Amount) || entered <= 0 {
		return grams
	}
	return grams * value.Amount / constituent.Must(id).PerGram / unit.Hundred / entered
}
