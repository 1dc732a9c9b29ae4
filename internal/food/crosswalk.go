package food

import (
	"cmp"
	"slices"
	"sync"

	"sipsum/internal/embedded"
)

var crosswalk = sync.OnceValue(func() map[string][]ID {
	rows := embedded.Rows("crosswalk.csv")
	slices.SortStableFunc(rows, func(a, b embedded.Row) int { return cmp.Compare(match(a), match(b)) })
	walk := map[string][]ID{}
	for _, row := range rows {
		core := row.Text("core")
		walk[core] = append(walk[core], ID{Table: row.Text("table"), Code: row.Text("code")})
	}
	return walk
})

// match is the grade of a counterpart; one that nobody has judged comes after all others.
func match(row embedded.Row) string { return cmp.Or(row.Text("match"), "unjudged") }

// Counterparts gives the foods of other tables that are the same food as a core
// food, by data/crosswalk.csv, the best match first.
func Counterparts(core string) []ID { return crosswalk()[core] }
