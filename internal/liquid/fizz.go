package liquid

import (
	"sync"

	"sipsum/internal/embedded"
)

const mgPerKg = 1e6

// fizz is the least carbon dioxide, a share of the mass, with which a liquid is no longer still.
var fizz = sync.OnceValue(func() float64 {
	for _, row := range embedded.Rows("worth.csv") {
		if row.Text("what") == "fizz" {
			return row.Number("value") / mgPerKg
		}
	}
	panic("liquid: worth.csv does not say what fizzes")
})

// Still reports whether so much carbon dioxide in so much of a liquid, both in grams, is nothing
// that anybody calls sparkling: what water brings from the ground.
func Still(gas, mass float64) bool { return gas < fizz()*mass }
