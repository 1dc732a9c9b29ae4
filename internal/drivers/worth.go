package drivers

import (
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// Worth is by what share a reading has to narrow something to be worth taking (data/worth.csv).
var Worth = sync.OnceValue(func() float64 {
	for _, row := range embedded.Rows("worth.csv") {
		if row.Text("what") == "reading" {
			return row.Number("value") / unit.Hundred
		}
	}
	panic("drivers: worth.csv does not say which reading is worth it")
})
