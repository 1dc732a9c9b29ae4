package csvreport

import (
	"encoding/csv"
	"io"
	"strconv"

	"sipsum/internal/clean"
)

// text makes a text of a stranger a cell that nothing runs.
func text(s string) string { return clean.Cell(s) }

// number writes a figure; nil: nobody knows it.
func number(x *float64) string {
	if x == nil {
		return ""
	}
	return strconv.FormatFloat(*x, 'g', 6, 64)
}

// write prints a table with its header.
func write(w io.Writer, header []string, rows [][]string) error {
	out := csv.NewWriter(w)
	if err := out.WriteAll(append([][]string{header}, rows...)); err != nil {
		return err
	}
	return out.Error()
}
