package caution

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// The triggers of data/cautions.csv.
const (
	byMark    = "mark"
	byGroup   = "group"
	byStep    = "step"
	byAmount  = "amount"
	byABV     = "abv"
	byUnknown = "unknown"
)

// row is one caution and its trigger.
type row struct {
	code   string
	rules  string // empty = any
	when   string
	key    string // mark, group, step or constituent
	basis  string // of an amount; for unknown, the mark that must be there
	atOnce bool   // the limit itself triggers
	limit  float64
	unit   string
	with   string   // of an amount that is only possible: the mark of a food that makes it so; empty: any
	exempt []string // words in the drink's name
	text   string
	source string
}

var table = sync.OnceValue(func() []row {
	var all []row
	for _, f := range embedded.Rows("cautions.csv") {
		r := row{
			code: f.Text("code"), rules: f.Text("rules"), when: f.Text("when"), key: f.Text("key"), basis: f.Text("basis"),
			atOnce: f.Text("compare") == "at least", unit: f.Text("unit"), with: f.Text("only_with"), text: f.Text("text"), source: f.Text("source"),
		}
		r.limit, _ = f.Optional("limit")
		if words := f.Text("exempt_names"); words != "" {
			r.exempt = strings.Split(words, "|")
		}
		if r.when == byAmount && constituent.Must(constituent.ID(r.key)).Unit != r.unit {
			f.Fail("the limit is not in the unit of %s", r.key)
		}
		all = append(all, r)
	}
	return all
})

// excuses reports whether the drink's name holds a word that lifts the caution.
func (r *row) excuses(name string) (word string, found bool) {
	for _, have := range strings.FieldsFunc(strings.ToLower(name), func(c rune) bool { return c < 'a' || c > 'z' }) {
		if slices.Contains(r.exempt, have) {
			return have, true
		}
	}
	return "", false
}
