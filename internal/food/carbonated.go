package food

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/embedded"
)

// gasRule is a row of data/carbonated.csv: foods of a group that are sold with their gas,
// by the words of their names. Without words all of the group are.
type gasRule struct {
	group         string
	words, unless []string
}

var gasRules = sync.OnceValue(func() []gasRule {
	list := func(text string) []string {
		return slices.DeleteFunc(strings.Split(text, "|"), func(s string) bool { return s == "" })
	}
	var rules []gasRule
	for _, row := range embedded.Rows("carbonated.csv") {
		rules = append(rules, gasRule{row.Text("group"), list(row.Text("words")), list(row.Text("unless"))})
	}
	return rules
})

// Carbonated reports whether a food is sold with carbon dioxide in it, by its group and
// its names (data/carbonated.csv).
func (f *Food) Carbonated() bool {
	named := func(words []string) bool {
		return slices.ContainsFunc(f.Names, func(n Name) bool {
			name := " " + strings.ToLower(strings.ReplaceAll(n.Text, ",", " ")) + " "
			return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(name, " "+w+" ") })
		})
	}
	return slices.ContainsFunc(gasRules(), func(r gasRule) bool {
		return r.group == f.Group && (len(r.words) == 0 || named(r.words)) && !named(r.unless)
	})
}
