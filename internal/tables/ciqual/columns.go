package ciqual

import (
	"strings"

	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// column is a constituent of the table.
type column struct {
	table.Mapping
	heading, english, unit string
	decimals               int // that its figures commonly print
}

// columns are all constituents that are known, by number and by heading.
type columns struct {
	all       []column
	byNumber  map[string]int
	byHeading map[string]int
	mapping   *table.ColumnMap
}

// readColumns reads data/maps/ciqual_columns.csv and the map of columns.
func readColumns() *columns {
	c := &columns{byNumber: map[string]int{}, byHeading: map[string]int{}, mapping: table.ReadMap(name)}
	for i, row := range embedded.Rows("maps/ciqual_columns.csv") {
		number, heading := row.Text("column"), row.Text("heading")
		found, ok := c.mapping.Find(number)
		if !ok {
			row.Fail("column %s is not in the map", number)
		}
		c.all = append(c.all, column{Mapping: found, heading: heading, english: row.Text("english"), unit: row.Text("unit"), decimals: row.Whole("decimals")})
		c.byNumber[number], c.byHeading[heading] = i, i
	}
	return c
}

// fold makes one blank of each run of blanks, so that headings and names
// compare.
func fold(text string) string { return strings.Join(strings.Fields(text), " ") }

// describe says where the values of a column go.
func (c column) describe(tableID string) food.Column {
	return food.Column{
		ID: c.ID(tableID), Number: c.Column, Name: c.english, Unit: c.unit,
		Decimals: c.decimals, Constituent: c.Fate == table.Mapped,
	}
}
