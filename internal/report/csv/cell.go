package csvreport

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"sipsum/internal/clean"
)

// runs are the characters that begin what a spreadsheet runs or reads as a sign of its own.
// The wide forms are those that a keyboard for Japanese writes.
const runs = "=+-@＝＋－＠"

// text makes a text of a stranger a cell that nothing runs.
func text(s string) string {
	s = clean.Prose(s)
	if first, _ := utf8.DecodeRuneInString(s); s != "" && strings.ContainsRune(runs, first) {
		return "'" + s
	}
	return s
}

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
