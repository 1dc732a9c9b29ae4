package allergen

import (
	"strings"
	"sync"

	"sipsum/internal/embedded"
)

// rule infers marks of a food from its table, its group and its name.
type rule struct {
	id string
	condition
	leaves   []string // present
	settles  bool     // the food is this and nothing else
	cautions []string
	why      string
	source   string
}

var markRules = sync.OnceValue(func() []rule {
	var all []rule
	for _, row := range embedded.Rows("mark_rules.csv") {
		all = append(all, rule{
			id: row.Text("id"), condition: conditionOf(row), leaves: leavesOf(row, "allergens"),
			settles: row.Text("settles") == "yes", cautions: list(row.Text("cautions")),
			why: row.Text("why"), source: row.Text("source"),
		})
	}
	return all
})

// leavesOf reads a cell of leaf codes.
func leavesOf(row embedded.Row, column string) []string {
	codes := list(row.Text(column))
	for _, code := range codes {
		if !IsLeaf(code) {
			row.Fail("no leaf %s", code)
		}
	}
	return codes
}

func list(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(text, "|")
}
