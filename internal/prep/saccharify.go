package prep

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/ledger"
)

// amylases are words of foods whose enzymes make sugar of starch (data/enzyme_foods.csv).
var amylases = sync.OnceValue(func() []string {
	var words []string
	for _, row := range embedded.Rows("enzyme_foods.csv") {
		words = append(words, row.Text("word"))
	}
	return words
})

// hinting does a step and says what a pot that is left to its enzymes may do besides: no
// other step than convert counts it.
func hinting[S drink.Step](do func(at, S) (Outcome, error)) func(at, S) (Outcome, error) {
	return func(a at, s S) (Outcome, error) {
		out, err := do(a, s)
		if name := brewsSugar(a.pot); err == nil && name != "" {
			out.note("%s may make sugar of the starch here, which is counted as whole: convert: {starch: 60 %%, to: glucose} says how much", name)
		}
		return out, err
	}
}

// brewsSugar names the food of a pot whose enzymes find starch in it; empty if there is none.
func brewsSugar(pot *ledger.Pot) string {
	if _, unknown := pot.Bound(starch); pot.Central(starch) <= 0 && len(unknown) == 0 || pot.Central(constituent.Water) <= 0 {
		return ""
	}
	for _, row := range pot.Rows {
		name := row.Profile.Food.Name()
		if slices.ContainsFunc(amylases(), func(word string) bool { return strings.Contains(strings.ToLower(name), word) }) {
			return name
		}
	}
	return ""
}
