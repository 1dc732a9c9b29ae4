package across

import (
	"cmp"
	"slices"
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/food"
)

// Match is a food of an agency's table that stands for a core food.
type Match struct {
	ID     food.ID
	Grade  string // A, B or C
	Reason string // of B and C: in what it is another
	Origin bool   // the core food is made from this row
}

// likeEnough reports whether it may stand in the place of the core food.
func (m Match) likeEnough() bool { return m.Grade == "A" || m.Grade == "B" }

// madeFrom is how data/crosswalk.csv begins the source of a row that a core food is made from.
const madeFrom = "the row that this food is made from"

// walk is data/crosswalk.csv: the best match of a core food in each table.
var walk = sync.OnceValue(func() map[string]map[string]Match {
	of := map[string]map[string]Match{}
	for _, row := range embedded.Rows("crosswalk.csv") {
		m := Match{ID: food.ID{Table: row.Text("table"), Code: row.Text("code")}, Grade: row.Text("match"), Reason: row.Text("reason")}
		m.Origin = len(row.Text("source")) >= len(madeFrom) && row.Text("source")[:len(madeFrom)] == madeFrom
		if m.Grade == "" { // made from another table that is here: no second opinion
			continue
		}
		core := row.Text("core")
		if of[core] == nil {
			of[core] = map[string]Match{}
		}
		if best, ok := of[core][m.ID.Table]; !ok || cmp.Less(m.Grade, best.Grade) {
			of[core][m.ID.Table] = m
		}
	}
	return of
})

// MatchOf gives the food of a table that is most like a core food.
func MatchOf(core, table string) (Match, bool) {
	m, ok := walk()[core][table]
	return m, ok
}

// Tables lists the tables that data/crosswalk.csv knows with a judgement of its own, by name: those that
// data/across_tables.csv takes. Every help text names them, and none has to read the crosswalk for that.
func Tables() []string {
	var list []string
	for _, row := range embedded.Rows("across_tables.csv") {
		if row.Text("why") == "" {
			list = append(list, row.Text("format"))
		}
	}
	slices.Sort(list)
	return list
}

// Judged gives the edition whose foods data/crosswalk.csv judged; empty if that is not known.
func (t Table) Judged() string {
	for _, row := range embedded.Rows("editions.csv") {
		if row.Text("format") == t.Format {
			return row.Text("edition")
		}
	}
	return ""
}

// WhyNot says why no drink is taken through tables of a format; empty if one is, or nobody has said.
func WhyNot(format string) string {
	for _, row := range embedded.Rows("across_tables.csv") {
		if row.Text("format") == format {
			return row.Text("why")
		}
	}
	return ""
}

// Origin reports whether core foods of the drink are made from rows of this table.
func (t Table) Origin() bool {
	return slices.ContainsFunc(t.Taken, func(x Taken) bool { return x.Origin })
}
