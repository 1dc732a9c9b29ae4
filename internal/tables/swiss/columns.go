package swiss

import (
	"encoding/csv"
	"fmt"
	"strconv"

	"sipsum/data"
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
	if r.rules, err = table.GroupsOf(name); err != nil {
		return err
	}
	if r.types, err = valueTypes(); err != nil {
		return err
	}
	mapping, err := table.ReadMap(name)
	if err != nil {
		return err
	}
	known, err := readColumns(mapping)
	if err != nil {
		return err
	}
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

// readColumns reads data/maps/swiss_columns.csv, column,heading,printed,unit,decimals,
// by heading.
func readColumns(mapping *table.ColumnMap) (map[string]column, error) {
	rows, err := embedded("swiss_columns.csv")
	if err != nil {
		return nil, err
	}
	all := make(map[string]column, len(rows))
	for _, row := range rows {
		found, ok := mapping.Find(row[0])
		decimals, err := strconv.Atoi(row[4])
		if !ok || err != nil {
			return nil, fmt.Errorf("swiss_columns.csv: column %s has no row in the map or no decimals", row[0])
		}
		all[row[1]] = column{Mapping: found, heading: row[1], printed: row[2], unit: row[3], decimals: decimals}
	}
	return all, nil
}

// describe says where each column goes.
func (r *reader) describe() []food.Column {
	all := make([]food.Column, len(r.columns))
	for i, c := range r.columns {
		all[i] = food.Column{ID: c.ID(r.tableID), Number: c.Column, Name: c.heading, Unit: c.unit, Decimals: c.decimals, Constituent: c.Fate == table.Mapped}
	}
	return all
}

// valueTypes reads data/maps/swiss_value_types.csv: type,state,why.
func valueTypes() (map[string]estimate.State, error) {
	rows, err := embedded("swiss_value_types.csv")
	if err != nil {
		return nil, err
	}
	types := map[string]estimate.State{}
	for _, row := range rows {
		if types[row[0]], err = estimate.ParseState(row[1]); err != nil {
			return nil, fmt.Errorf("swiss_value_types.csv: %w", err)
		}
	}
	return types, nil
}

// embedded reads a small file of data/maps without its header.
func embedded(name string) ([][]string, error) {
	in, err := data.FS.Open("maps/" + name)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	rows, err := csv.NewReader(in).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return rows[1:], nil
}
