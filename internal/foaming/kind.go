package foaming

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/phrase"
)

// kind is a kind of foam, and the foods by which it is recognised.
type kind struct {
	id, name string
	groups   []string // none: any
	words    phrase.List
	ignore   phrase.List
	unless   string // a kind in whose presence this one says nothing
}

// kinds are data/foam_foods.csv.
var kinds = sync.OnceValue(func() []kind {
	var list []kind
	for _, row := range embedded.Rows("foam_foods.csv") {
		k := kind{
			id: row.Text("kind"), name: row.Text("name"), words: phrase.Read(row.Text("words")), ignore: phrase.Read(row.Text("ignore")), unless: row.Text("unless"),
		}
		if groups := row.Text("groups"); groups != "" {
			k.groups = strings.Split(groups, "|")
		}
		list = append(list, k)
	}
	return list
})

// of tells whether a food is one of the kind.
func (k kind) of(f *food.Food) bool {
	if len(k.groups) > 0 && !slices.Contains(k.groups, f.Group) {
		return false
	}
	return len(k.words) == 0 || slices.ContainsFunc(f.Names, func(n food.Name) bool {
		return k.words.In(k.ignore.Without(phrase.Words(n.Text)))
	})
}

// rows are those of a pot that are of the kind, as far as something of them is left.
func (k kind) rows(pot *ledger.Pot) []int {
	var rows []int
	for i, r := range pot.Rows {
		if k.of(r.Profile.Food) && pot.CentralOf(i, constituent.Mass) > 0 {
			rows = append(rows, i)
		}
	}
	return rows
}

// kindsOf are the kinds of foam that a pot may be, with their rows.
func kindsOf(pot *ledger.Pot) (list []kind, rows map[string][]int) {
	rows = map[string][]int{}
	for _, k := range kinds() {
		if found := k.rows(pot); len(found) > 0 && len(rows[k.unless]) == 0 {
			list, rows[k.id] = append(list, k), found
		}
	}
	return list, rows
}
