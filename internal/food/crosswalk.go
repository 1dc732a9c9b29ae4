package food

import "sync"

var crosswalk = sync.OnceValue(func() map[string][]ID {
	walk := map[string][]ID{}
	for _, row := range readRows("crosswalk.csv") {
		walk[row[0]] = append(walk[row[0]], ID{Table: row[1], Code: row[2]})
	}
	return walk
})

// Counterparts gives the foods of other tables that are the same food as a core
// food, by data/crosswalk.csv, in the order of the file.
func Counterparts(core string) []ID { return crosswalk()[core] }
