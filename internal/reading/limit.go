package reading

import (
	"sync"

	"sipsum/internal/embedded"
)

var readingLimits = sync.OnceValue(func() map[string]float64 {
	all := map[string]float64{}
	for _, row := range embedded.Rows("reading_limits.csv") {
		all[row.Text("limit")] = row.Number("value")
	}
	return all
})

// limitOf gives a row of data/reading_limits.csv; it panics if there is none.
func limitOf(name string) float64 {
	x, ok := readingLimits()[name]
	if !ok {
		panic("reading: reading_limits.csv has no row " + name)
	}
	return x
}
