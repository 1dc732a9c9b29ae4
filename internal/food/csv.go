package food

import (
	"encoding/csv"
	"fmt"
	"strconv"

	"sipsum/data"
)

// readRows gives the rows of an embedded table without its header. The audit
// tests of the data folder keep these files well formed, so a fault here is a
// fault of the build.
func readRows(name string) [][]string {
	file, err := data.FS.Open(name)
	if err != nil {
		panic("food: " + err.Error())
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("food: " + name + ": " + err.Error())
	}
	return rows[1:]
}

func mustNumber(name, text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(fmt.Sprintf("food: %s: %q is not a number", name, text))
	}
	return v
}
