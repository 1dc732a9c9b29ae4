package prep

import (
	"encoding/csv"
	"fmt"
	"strconv"

	"sipsum/data"
)

// tableRows reads a file of data/, its head first. The files are embedded, so a
// fault in one is the program's own.
func tableRows(name string) [][]string {
	file, err := data.FS.Open(name)
	if err != nil {
		panic("prep: " + err.Error())
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	rows, err := reader.ReadAll()
	if err != nil {
		panic("prep: " + name + ": " + err.Error())
	}
	return rows
}

func mustNumber(file, text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(fmt.Sprintf("prep: %s: %q is not a number", file, text))
	}
	return x
}
