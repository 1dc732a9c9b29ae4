package unit

import (
	"sync"

	"sipsum/internal/embedded"
)

// Limit is the range in which a figure can be meant.
type Limit struct {
	Low, High float64
	Source    string
}

type limitKey struct{ quantity, unit string }

var limits = sync.OnceValue(func() map[limitKey]Limit {
	all := map[limitKey]Limit{}
	for _, row := range embedded.Rows("limits.csv") {
		key := limitKey{row.Text("quantity"), row.Text("unit")}
		if _, twice := all[key]; twice {
			row.Fail("%s in %s stands twice", key.quantity, key.unit)
		}
		all[key] = Limit{row.Number("low"), row.Number("high"), row.Text("source")}
	}
	return all
})

// LimitOf gives the limit of a quantity in a unit (data/limits.csv); it panics if the
// table has none, since the code names both.
func LimitOf(quantity, in string) Limit {
	l, ok := limits()[limitKey{quantity, in}]
	if !ok {
		panic("unit: limits.csv lacks " + quantity + " in " + in)
	}
	return l
}

// Holds reports whether a figure lies within the limit.
func (l Limit) Holds(x float64) bool { return x >= l.Low && x <= l.High }
