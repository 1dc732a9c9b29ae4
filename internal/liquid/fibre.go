package liquid

import (
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/ledger"
)

// clearGroups are the classes of foods that hold nothing in suspension, by data/phases.csv:
// those of which one share passes all filters.
var clearGroups = sync.OnceValue(func() map[string]bool {
	groups := map[string]bool{}
	for _, row := range embedded.Rows("phases.csv") {
		if row.Text("phase") == "suspended" && row.Text("through") == "*" {
			groups[row.Text("group")] = true
		}
	}
	return groups
})

// dissolvedFibre counts fibre that is in solution as the dissolved carbohydrate that it is:
// that of a gum, of inulin, of a wine. Of the fibre of pulp a third dissolves.
func dissolvedFibre(row ledger.Row, id constituent.ID) constituent.ID {
	if id == constituent.Fibre && clearGroups()[row.Profile.Food.Group] {
		return constituent.Carbohydrate
	}
	return id
}
