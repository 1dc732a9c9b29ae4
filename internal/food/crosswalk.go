package food

import (
	"sync"

	"sipsum/internal/embedded"
)

var crosswalk = sync.OnceValue(func() map[string][]ID {
	walk := map[string][]ID{}
	for _, row := range embedded.Rows("crosswalk.csv") {
		core := row.Text("core")
		walk[core] = append(walk[core], ID{Table: row.Text("table"), Code: row.Text("code")})
	}
	return walk
})

// Counterparts gives the foods of other tables that are the same food as a core
// food, by data/crosswalk.csv, in the order of the file.
func Counterparts(core string) []ID { return crosswalk()[core] }
