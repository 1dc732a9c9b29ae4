package ifct

import (
	"fmt"
	"strings"

	"sipsum/internal/embedded"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// component is a column that becomes a value, and the column of its deviation.
type component struct {
	table.Mapping
	label     string
	deviation string // empty if the file has none
}

// codeOf gives the code of a header cell "Label; code"; a cell without a code is
// its own.
func codeOf(cell string) string {
	if at := strings.LastIndex(cell, "; "); at >= 0 {
		return cell[at+2:]
	}
	return cell
}

// prepare reads the map, the rules and the header, and matches them.
func (r *reader) prepare() (err error) {
	r.rules = table.GroupsOf(name)
	r.languages = languages()
	mapping := table.ReadMap(name)
	rows, err := table.OpenRows(r.files, r.dir, file, codeOf, again)
	if err != nil {
		return err
	}
	defer rows.Close()
	if err := rows.Need("code", "name", "scie", "lang", "grup", "regn"); err != nil {
		return err
	}
	deviations := map[string]string{}
	for _, cell := range rows.Header {
		row, ok := mapping.Find(codeOf(cell))
		switch {
		case !ok:
			return rows.Wrong(codeOf(cell), fmt.Sprintf("column %.40q is not known to sipsum", cell))
		case row.Fate == table.Deviation:
			deviations[row.Of] = row.Column
		case row.Fate != table.Refused:
			label, _, _ := strings.Cut(cell, "; ")
			r.components = append(r.components, component{Mapping: row, label: label})
		}
	}
	for i := range r.components {
		r.components[i].deviation = deviations[r.components[i].Column]
		delete(deviations, r.components[i].Column)
	}
	for of, column := range deviations {
		return fail.At(fail.Wrong, fail.Place{File: r.dir + "/" + file, Line: 1}, fmt.Sprintf("column %q is missing, but its deviation %q is there", of, column), again)
	}
	return nil
}

// columns says where each component goes. All are printed in g but energy.
func (r *reader) columns() []food.Column {
	all := make([]food.Column, len(r.components))
	for i, c := range r.components {
		unit := "g"
		if c.Column == "enerc" {
			unit = "kJ"
		}
		all[i] = food.Column{ID: c.ID(r.tableID), Number: c.Column, Name: c.label, Unit: unit, Decimals: -1, Constituent: c.Fate == table.Mapped}
	}
	return all
}

// languages reads data/maps/ifct_languages.csv.
func languages() map[string]string {
	byAbbreviation := map[string]string{}
	for _, row := range embedded.Rows("maps/ifct_languages.csv") {
		byAbbreviation[row.Text("abbreviation")] = row.Text("language")
	}
	return byAbbreviation
}
