package ciqual

import (
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"sipsum/data"
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

// readColumns reads data/maps/ciqual_columns.csv, which is
// column,heading,english,unit,decimals, and the map of columns.
func readColumns() (*columns, error) {
	mapping, err := table.ReadMap(name)
	if err != nil {
		return nil, err
	}
	rows, err := embedded("ciqual_columns.csv")
	if err != nil {
		return nil, err
	}
	c := &columns{byNumber: map[string]int{}, byHeading: map[string]int{}, mapping: mapping}
	for i, row := range rows {
		found, ok := mapping.Find(row[0])
		decimals, err := strconv.Atoi(row[4])
		if !ok || err != nil {
			return nil, fmt.Errorf("ciqual_columns.csv: column %s has no row in the map or no decimals", row[0])
		}
		c.all = append(c.all, column{Mapping: found, heading: row[1], english: row[2], unit: row[3], decimals: decimals})
		c.byNumber[row[0]], c.byHeading[row[1]] = i, i
	}
	return c, nil
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

// embedded reads a small file of data/maps without its header.
func embedded(name string) ([][]string, error) {
	file, err := data.FS.Open("maps/" + name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return rows[1:], nil
}
