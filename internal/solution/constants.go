package solution

import "sync"

var constants = sync.OnceValue(func() map[string]float64 {
	values := map[string]float64{}
	for _, file := range []string{"constants.csv", "solution_constants.csv"} {
		for _, row := range dataRows(file) {
			values[row[0]] = dataNumber(file, row[1])
		}
	}
	return values
})
