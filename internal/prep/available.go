package prep

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// availableEntry is the entry of data/extraction.csv for the available carbohydrate in a
// gram of what dissolves of a solid.
const availableEntry constituent.ID = "available"

// nameCarbohydrate tells what the carbohydrate is that a brew or a steep has drawn out of a
// row, where data/extraction.csv knows: tables give a solid its carbohydrate by difference,
// and of that next to nothing is sugar or starch in the liquid. What goes beyond is
// carbohydrate without a name (CHOCDF-other), and no sugar is unknown beyond it.
func (x *extraction) nameCarbohydrate(pot *ledger.Pot, row int) {
	key, ok := x.find(pot.Rows[row].Profile.Food.Group, availableEntry)
	from, to := pot.Columns.At(constituent.RestOf(constituent.Available)), pot.Columns.At(burnt)
	if !ok || from < 0 || to < 0 || !pot.Has(row, from) {
		return
	}
	share := x.column(pot.Rows[row], key)
	solids, water, available := pot.Of(row, constituent.Mass), pot.Of(row, constituent.Water), pot.Of(row, constituent.Available)
	rest, unnamed := pot.Write(row, from), pot.Write(row, to)
	for d := range rest {
		beyond := available[d] - share[d]*(solids[d]-water[d])
		moved := min(max(beyond, 0), max(rest[d], 0))
		rest[d] -= moved
		unnamed[d] += moved
	}
	most := extractions()[key].high * (solids[0] - water[0])
	bounds := pot.Bounds(row)
	for _, id := range []constituent.ID{constituent.Sugar, constituent.Available, "STARCH"} {
		capBound(bounds, id, most)
	}
	for _, leaf := range constituent.Sums().Leaves(constituent.Sugar) {
		capBound(bounds, leaf.ID, most)
	}
}

// capBound lets what is unknown be no more than most.
func capBound(bounds []float64, id constituent.ID, most float64) {
	order := constituent.Must(id).Order
	if b := bounds[order]; b > most || math.IsNaN(b) {
		bounds[order] = most
	}
}
