package acid

import (
	"encoding/csv"
	"fmt"
	"strconv"
	"sync"

	"sipsum/data"
)

// rows reads one of the package's data files without its header.
func rows(name string) [][]string {
	file, err := data.FS.Open(name)
	if err != nil {
		panic("acid: " + err.Error())
	}
	defer file.Close()
	all, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("acid: " + name + ": " + err.Error())
	}
	return all[1:]
}

// number reads a cell; a blank one is 0.
func number(file, text string) float64 {
	if text == "" {
		return 0
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(fmt.Sprintf("acid: %s: %q is not a number", file, text))
	}
	return v
}

var constants = sync.OnceValue(func() map[string]float64 {
	const file = "acid_constants.csv"
	values := map[string]float64{}
	for _, row := range rows(file) {
		values[row[0]] = number(file, row[1])
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
