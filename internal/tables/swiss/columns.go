package swiss

import (
	"fmt"

	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// column is a constituent of the table.
type column struct {
	table.Mapping
	heading  string
	printed  string // its unit in words, as each figure has it
	unit     string
	decimals int // that its figures commonly print
}

// beside are the columns that belong to the figure before them.
var beside = map[string]bool{"unit": true, "matrix unit": true, "value type": true, "source": true}

// prepare reads the maps and the header, and matches them.
func (r *reader) prepare() (err error) {
	r.rules = table.GroupsOf(name)
	r.types = valueTypes()
	mapping := table.ReadMap(name)
	known := readColumns(mapping)
	rows, err := r.open()
	if err != nil {
		return err
	}
	defer rows.Close()
	needed := []string{"ID", "category E", "specific gravity"}
	for _, language := range languages {
		needed = append(needed, "name "+language.letter, "synonyms "+language.letter)
	}
	if err := rows.Need(needed...); err != nil {
		return err
	}
	rename := renamer()
	for _, cell := range rows.Header {
		column := rename(cell)
		c, ok := known[cell]
		if !ok {
			if row, found := mapping.Find(cell); !found || row.Fate != table.Refused {
				return rows.Wrong(column, fmt.Sprintf("column %.40q is not known to sipsum", cell))
			}
			continue
		}
		for field := range beside {
			if err := rows.Need(cell + ": " + field); err != nil {
				return err
			}
		}
		r.columns = append(r.columns, c)
	}
	if len(r.columns) == 0 {
		return rows.Wrong("ID", "no column is a constituent")
	}
	return nil
}

// renamer gives a header cell the name by which it is asked for: "protein:
// unit" for the unit behind protein. It is called once a cell, in order.
func renamer() func(string) string {
	figure := ""
	return func(cell string) string {
		if beside[cell] {
			return figure + ": " + cell
		}
		figure = cell
		return cell
	}
}

// readColumns reads data/maps/swiss_columns.csv by heading.
func readColumns(mapping *table.ColumnMap) map[string]column {
	all := map[string]column{}
	for _, row := range embedded.Rows("maps/swiss_columns.csv") {
		found, ok := mapping.Find(row.Text("column"))
		if !ok {
			row.Fail("column %s is not in the map", row.Text("column"))
		}
		heading := row.Text("heading")
		all[heading] = column{Mapping: found, heading: heading, printed: row.Text("printed"), unit: row.Text("unit"), decimals: row.Whole("decimals")}
	}
	return all
}

// describe says where each column goes.
func (r *reader) describe() []food.Column {
	all := make([]food.Column, len(r.columns))
	for i, c := range r.columns {
		all[i] = food.Column{ID: c.ID(r.tableID), Number: c.Column, Name: c.heading, Unit: c.unit, Decimals: c.decimals, Constituent: c.Fate == table.Mapped}
	}
	return all
}

// valueTypes reads data/maps/swiss_value_types.csv.
func valueTypes() map[string]estimate.State {
	types := map[string]estimate.State{}
	for _, row := range embedded.Rows("maps/swiss_value_types.csv") {
		state, err := estimate.ParseState(row.Text("state"))
		if err != nil {
			row.Fail("%v", err)
		}
		types[row.Text("type")] = state
	}
	return types
}
