package allergen

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/phrase"
)

// anyTable is the table of a rule that holds whatever the table.
const anyTable = "*"

// rule infers marks of a food from its table, its group and its name.
type rule struct {
	id              string
	table           string
	groups          []string    // of ours; empty = any
	publisherGroups []string    // empty = any
	names           phrase.List // one of them; empty = any name
	ignore          phrase.List // taken out of the name first
	not             phrase.List // none of them
	leaves          []string    // present
	likely          []string    // possible: to be checked
	settles         bool        // the food is this and nothing else
	cautions        []string
	why             string
	source          string
}

var markRules = sync.OnceValue(func() []rule {
	var all []rule
	for _, row := range embedded.Rows("mark_rules.csv") {
		r := rule{
			id: row.Text("id"), table: row.Text("table"),
			groups: list(row.Text("group")), publisherGroups: list(row.Text("publisher_group")),
			names: phrase.Read(row.Text("name_words")), ignore: phrase.Read(row.Text("ignore")), not: phrase.Read(row.Text("not_words")),
			settles: row.Text("settles") == "yes", cautions: list(row.Text("cautions")),
			why: row.Text("why"), source: row.Text("source"),
		}
		for _, code := range list(row.Text("allergens")) {
			code, likely := strings.CutSuffix(code, "?")
			if !IsLeaf(code) {
				row.Fail("no leaf %s", code)
			}
			if likely {
				r.likely = append(r.likely, code)
			} else {
				r.leaves = append(r.leaves, code)
			}
		}
		all = append(all, r)
	}
	return all
})

func list(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(text, "|")
}

// matches reports whether the rule speaks of the food under this name.
func (r *rule) matches(it Item, words []string) bool {
	if r.table != anyTable && r.table != it.Food.Table {
		return false
	}
	if r.groups != nil && !slices.Contains(r.groups, it.Group) {
		return false
	}
	if r.publisherGroups != nil && !slices.Contains(r.publisherGroups, it.PublisherGroup) {
		return false
	}
	if r.not.In(words) {
		return false
	}
	return r.names == nil || r.names.In(r.ignore.Without(words))
}
