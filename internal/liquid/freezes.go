package liquid

import (
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// FreezesAt gives where ice begins to form in a pot of central values, in °C; false where nobody
// knows (solution.FreezesAt).
func FreezesAt(pot *ledger.Pot) (celsius float64, ok bool) {
	grams := map[constituent.ID]float64{}
	for _, leaf := range pot.Columns.List {
		grams[leaf.ID] = pot.Central(leaf.ID)
	}
	return solution.FreezesAt(grams)
}
