package acid

import (
	"sync"

	"sipsum/internal/embedded"
)

var constants = sync.OnceValue(func() map[string]float64 {
	values := map[string]float64{}
	for _, row := range embedded.Rows("acid_constants.csv") {
		values[row.Text("constant")] = row.Number("value")
	}
	return values
})

// constant gives a row of data/acid_constants.csv; it panics if there is none.
func constant(name string) float64 {
	v, ok := constants()[name]
	if !ok {
		panic("acid: acid_constants.csv lacks " + name)
	}
	return v
}
