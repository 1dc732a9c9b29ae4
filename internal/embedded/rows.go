package embedded

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"sync"

	"sipsum/data"
)

// Row is a row of an embedded table.
type Row struct {
	table *table
	line  int
	cells []string
}

type table struct {
	name    string
	columns []string
}

// Rows reads a file of package data, such as "units.csv" or "maps/sr.csv".
func Rows(name string) []Row {
	file, err := data.FS.Open(name)
	if err != nil {
		panic("embedded: " + err.Error())
	}
	defer file.Close()
	return Parse(name, file)
}

// Parse reads a table that another package embeds. name is for the message of a
// panic.
func Parse(name string, file io.Reader) []Row {
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("embedded: " + name + ": " + err.Error())
	}
	if len(records) == 0 {
		panic("embedded: " + name + " is empty")
	}
	t := &table{name: name, columns: records[0]}
	rows := make([]Row, 0, len(records)-1)
	for i, cells := range records[1:] {
		rows = append(rows, Row{table: t, line: i + 2, cells: cells})
	}
	return rows
}

// Columns gives the names of the header, in order.
func (r Row) Columns() []string { return r.table.columns }

// Text gives a cell as it stands.
func (r Row) Text(column string) string {
	i := slices.Index(r.table.columns, column)
	if i < 0 {
		panic("embedded: " + r.table.name + " has no column " + column)
	}
	return r.cells[i]
}

// Number gives a cell that must hold a number.
func (r Row) Number(column string) float64 {
	x, err := strconv.ParseFloat(r.Text(column), 64)
	if err != nil {
		r.Fail("%s: %q is not a number", column, r.Text(column))
	}
	return x
}

// Optional gives a cell that may be blank; ok tells whether it holds a number.
func (r Row) Optional(column string) (x float64, ok bool) {
	if r.Text(column) == "" {
		return 0, false
	}
	return r.Number(column), true
}

// Whole gives a cell that must hold a whole number.
func (r Row) Whole(column string) int {
	n, err := strconv.Atoi(r.Text(column))
	if err != nil {
		r.Fail("%s: %q is not a whole number", column, r.Text(column))
	}
	return n
}

// Fail panics with the place of the row and what is wrong with it.
func (r Row) Fail(format string, args ...any) {
	panic(fmt.Sprintf("embedded: %s:%d: %s", r.table.name, r.line, fmt.Sprintf(format, args...)))
}

// Limit gives a row of size_limits.csv: how much of something a program takes that a stranger may feed.
func Limit(name string) int {
	limit, ok := limits()[name]
	if !ok {
		panic("embedded: size_limits.csv has no limit " + name)
	}
	return limit
}

var limits = sync.OnceValue(func() map[string]int {
	all := map[string]int{}
	for _, row := range Rows("size_limits.csv") {
		all[row.Text("limit")] = row.Whole("value")
	}
	return all
})
