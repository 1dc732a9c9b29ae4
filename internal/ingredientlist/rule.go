package ingredientlist

import (
	"sync"

	"sipsum/internal/embedded"
)

// Rule is what a set of rules says of the list.
type Rule struct {
	Rules   string
	Heading string
	Note    string // how the list is printed, where it differs from the others
	Source  string
	Status  string // "verified", "secondary" or "unverified"
}

var rules = sync.OnceValue(func() map[string]Rule {
	all := map[string]Rule{}
	for _, row := range embedded.Rows("ingredient_rules.csv") {
		all[row.Text("rules")] = Rule{row.Text("rules"), row.Text("heading"), row.Text("note"), row.Text("source"), row.Text("status")}
	}
	return all
})

func ruleOf(code string) Rule { return rules()[code] }
