package afcd

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// column is a constituent of the table.
type column struct {
	table.Mapping
	heading  string // on one line
	unit     string
	decimals int      // to which the publisher prints it at least
	zero     string   // what a printed 0 means
	foundIn  []string // how numbers of groups begin that hold it; those after a - do not; none: all do
	at       string   // its heading in the sheet that is read
}

// half is half of the last digit, in the unit printed.
func (c column) half() float64 { return math.Pow10(-c.decimals) / 2 }

// energy tells the columns of energy, which is no mass.
func (c column) energy() bool { return c.unit == "kJ" }

// share tells the columns per 100 g of fatty acids or per g of nitrogen.
func (c column) share() bool {
	return strings.HasSuffix(c.Column, "-share") || strings.HasSuffix(c.Column, "-per-n")
}

// readColumns reads data/maps/afcd_columns.csv by heading, in small letters.
func readColumns() map[string]column {
	mapping := table.ReadMap(name)
	all := map[string]column{}
	for _, row := range embedded.Rows("maps/afcd_columns.csv") {
		found, ok := mapping.Find(row.Text("column"))
		if !ok {
			row.Fail("column %s is not in the map", row.Text("column"))
		}
		c := column{
			Mapping: found, heading: row.Text("heading"), unit: row.Text("unit"), decimals: row.Whole("decimals"),
			zero: row.Text("zero"), foundIn: strings.Fields(row.Text("found_in")),
		}
		switch c.zero {
		case zeroBelow, zeroCalculated, zeroFatty:
		default:
			row.Fail("zero: %q is not known", c.zero)
		}
		all[strings.ToLower(c.heading)] = c
	}
	return all
}

// match finds the columns of a sheet of nutrients; every one must be known.
func match(rows *table.HeadedSheet) ([]column, error) {
	h, known := headings(rows), readColumns()
	for _, needed := range []string{keyColumn, classColumn, nameColumn} {
		if h.is(needed) == "" {
			return nil, rows.Wrong(rows.Header[0], fmt.Sprintf("column %q is missing in this header", needed))
		}
	}
	var all []column
	for _, heading := range rows.Header {
		low := strings.ToLower(heading)
		if low == keyColumn || low == classColumn || low == nameColumn {
			continue
		}
		c, ok := known[low]
		if !ok {
			return nil, rows.Wrong(heading, fmt.Sprintf("column %.60q is not known to sipsum", heading))
		}
		c.at = heading
		all = append(all, c)
	}
	return all, nil
}

// describe says where each column goes.
func (r *reader) describe() []food.Column {
	all := make([]food.Column, len(r.columns))
	for i, c := range r.columns {
		all[i] = food.Column{ID: c.ID(r.tableID), Number: c.Column, Name: c.name(), Unit: c.unit, Decimals: c.decimals, Constituent: c.Fate == table.Mapped}
	}
	return all
}

// name is the heading without its unit.
func (c column) name() string {
	return strings.TrimSpace(c.heading[:strings.LastIndex(c.heading, "(")])
}
