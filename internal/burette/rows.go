package burette

import (
	"sync"

	"sipsum/internal/embedded"
)

// row is a row of data/burette.csv: a prior or a limit.
type row struct{ value, sd float64 }

var rows = sync.OnceValue(func() map[string]row {
	all := map[string]row{}
	for _, r := range embedded.Rows("burette.csv") {
		all[r.Text("what")] = row{r.Number("value"), r.Number("sd")}
	}
	return all
})

// rowOf gives a row; it panics if there is none.
func rowOf(what string) row {
	r, ok := rows()[what]
	if !ok {
		panic("burette: burette.csv has no row " + what)
	}
	return r
}
