package solution

import (
	"sync"

	"sipsum/internal/embedded"
)

var constants = sync.OnceValue(func() map[string]float64 {
	values := map[string]float64{}
	for _, file := range []string{"constants.csv", "solution_constants.csv"} {
		for _, row := range embedded.Rows(file) {
			values[row.Text("constant")] = row.Number("value")
		}
	}
	return values
})

// KilojoulesOfAKilocalorie converts an energy that is printed in one unit alone.
func KilojoulesOfAKilocalorie() float64 { return constants()["kilojoules of a kilocalorie"] }
