package allergen

import (
	"slices"
	"sync"

	"sipsum/internal/embedded"
)

// exception is what a set of rules takes out of one of its classes: glucose syrup of wheat
// is made of a cereal that contains gluten, and need not be declared.
type exception struct {
	id string
	condition
	rules  string
	leaves []string
	what   string // as printed
	source string
	status string
}

var exceptions = sync.OnceValue(func() []exception {
	var all []exception
	for _, row := range embedded.Rows("allergen_exceptions.csv") {
		all = append(all, exception{
			id: row.Text("id"), rules: row.Text("rules"), leaves: leavesOf(row, "leaves"),
			condition: conditionOf(row),
			what:      row.Text("what"), source: row.Text("source"), status: row.Text("status"),
		})
	}
	return all
})

// exceptionOf gives the exception of a set of rules that takes a leaf out of a food, nil if
// there is none. What the owner of a pack states is declared, whatever it was made of.
func exceptionOf(rules, code string, it Item) *exception {
	for i := range exceptions() {
		x := &exceptions()[i]
		if x.rules == rules && slices.Contains(x.leaves, code) && x.of(it, it.names()) {
			return x
		}
	}
	return nil
}
