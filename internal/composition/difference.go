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
//	what a row's mass leaves · (100 − Σ published) / what a fresh 100 g of it leaves
//
// which is 100 − Σ published of a food as it is poured, stays what it is when water boils off,
// and keeps the ratio where something is separated.

// proximates are what a food must know for it beside its water, and what counts as far as it is
// known: tables leave it out of what has none.
var (
	proximates = []constituent.ID{constituent.Protein, constituent.Fat, constituent.Ash}
	volatiles  = []constituent.ID{constituent.Alcohol, constituent.CarbonDioxide}
	declared   = []constituent.ID{constituent.Sugar, constituent.Fibre, constituent.Polyols}
)

// ByDifference gives what carbohydrate by difference of a pot is made of, in grams at central
// values: the mass of the foods that know all that is subtracted, and these, water as what
// closes the sum; the carbohydrate of the foods that do not, as far as it is known; and the
// sugars, fibre and polyols of the foods of which these are published as more than the
// difference (the lactose of milk): a declaration has rows for them, and none may be more than
// its whole.
func ByDifference(pot *ledger.Pot) map[constituent.ID]estimate.Amount {
	sum := map[constituent.ID]estimate.Amount{}
	add := func(id constituent.ID, grams, bound float64) {
		a := sum[id]
		sum[id] = estimate.Amount{Mean: a.Mean + grams, WithBounds: a.WithBounds + grams + bound, Known: true}
	}
	for row := range pot.Rows {
		of := func(id constituent.ID) float64 { return pot.Of(row, id)[0] }
		if !knows(pot, row) {
			add(constituent.Carbohydrate, of(constituent.Carbohydrate), mostOfRow(pot, row, constituent.Must(constituent.Carbohydrate)))
			continue
		}
		rest, parts := left(pot, row), 0.0
		for _, id := range declared {
			parts += of(id)
		}
		if parts > rest {
			for _, id := range declared {
				add(id, of(id), 0)
			}
			continue
		}
		water := of(constituent.Mass) - rest
		for _, list := range [][]constituent.ID{proximates, volatiles} {
			for _, id := range list {
				fresh, entered := fresh(pot.Rows[row].Profile, id)
				grams := of(id)
				if entered > 0 {
					grams *= fresh / entered
				}
				add(id, grams, 0)
				water -= grams
			}
		}
		// A table that prints more than 100 g of an oil leaves less than no water: its mass is
		// what it prints then.
		add(constituent.Mass, of(constituent.Mass)+max(-water, 0), 0)
		add(constituent.Water, max(water, 0), 0)
	}
	return sum
}

// knows reports whether a row knows all that is subtracted. What is a substance of one
// formula has no difference: its parts are all that it is.
func knows(pot *ledger.Pot, row int) bool {
	unknown := func(id constituent.ID) bool { return pot.Bounds(row)[constituent.Must(id).Order] != 0 }
	for _, id := range proximates {
		if unknown(id) {
			return false
		}
	}
	return !unknown(constituent.Water) && !pot.Rows[row].Profile.Food.Chemical
}

// left gives what the mass of a row leaves, in the proportion in which its table prints it.
func left(pot *ledger.Pot, row int) float64 {
	now, published, entered := pot.CentralOf(row, constituent.Mass), 1.0, 1.0
	for _, id := range append([]constituent.ID{constituent.Water}, append(proximates, volatiles...)...) {
		now -= pot.Of(row, id)[0]
		p, e := fresh(pot.Rows[row].Profile, id)
		published, entered = published-p, entered-e
	}
	const dust = 1e-9 // of a gram: our own bound, what arithmetic leaves
	if entered <= dust {
		return max(now, 0)
	}
	return max(now*published/entered, 0)
}

// fresh gives what a gram of a food holds as its table prints it and as it has entered; the
// same twice where the table prints nothing.
func fresh(profile *food.Profile, id constituent.ID) (published, entered float64) {
	entered = profile.Cell(id).Amount
	if value, ok := profile.Food.Value(id); ok && food.Stated(value.Amount) {
		return value.Amount / constituent.Must(id).PerGram / unit.Hundred, entered
	}
	return entered, entered
}
