package solution

import (
	"encoding/csv"
	"fmt"
	"strconv"

	"sipsum/data"
)

// dataRows reads a data file without its header.
func dataRows(name string) [][]string {
	file, err := data.FS.Open(name)
	if err != nil {
		panic("solution: " + err.Error())
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("solution: " + name + ": " + err.Error())
	}
	return rows[1:]
}

func dataNumber(name, text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(fmt.Sprintf("solution: %s: %q is not a number", name, text))
	}
	return v
}
