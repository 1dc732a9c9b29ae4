package stfcj

import (
	"fmt"
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
	"sipsum/internal/unit"
)

// column is a row of data/maps/stfcj_columns.csv with its row of the map.
type column struct {
	table.Mapping
	part     part
	id       constituent.ID
	name     string
	unit     string
	decimals int
	derived  bool    // computed from other columns
	zero     float64 // a printed 0 is below this, in the unit printed
	trace    float64 // a trace is below this
}

// data reads sipsum's own files.
func (r *reader) data() {
	mapping := table.ReadMap(name)
	r.rules = table.GroupsOf(name)
	r.wrong = embedded.Rows("maps/stfcj_misprints.csv")
	r.byID = map[string]*column{}
	for _, row := range embedded.Rows("maps/stfcj_columns.csv") {
		c := parseColumn(row)
		var ok bool
		if c.Mapping, ok = mapping.Find(row.Text("column")); !ok {
			row.Fail("column %s is not in the map", row.Text("column"))
		}
		c.id = c.ID(r.tableID)
		r.byID[c.Column] = c
		r.all = append(r.all, c)
	}
}

// misprinted reports whether a cell is a known misprint of the publisher, a row
// of data/maps/stfcj_misprints.csv.
func (r *reader) misprinted(code, column, printed string) bool {
	return slices.ContainsFunc(r.wrong, func(row embedded.Row) bool {
		return row.Text("code") == code && row.Text("column") == column && row.Text("printed") == printed
	})
}

func parseColumn(row embedded.Row) *column {
	c := &column{
		part: part(row.Text("part")), name: row.Text("name"), unit: row.Text("unit"),
		derived: row.Text("kind") == "derived", decimals: row.Whole("decimals"),
	}
	least := math.Pow10(-c.decimals)
	for name, into := range map[string]*float64{"zero": &c.zero, "trace": &c.trace} {
		share := row.Number(name)
		if share <= 0 {
			row.Fail("%s: %g is not a share of the least amount", name, share)
		}
		*into = share * least
	}
	return c
}

// match finds the columns of a sheet: every column must be known and have the
// unit that sipsum knows, and none of its part may be missing.
func (r *reader) match(rows *table.SheetRows, h *header, p part) ([]*column, error) {
	matched := make([]*column, len(h.columns))
	for i, place := range h.columns {
		c, ok := r.byID[place.id]
		switch {
		case !ok:
			return nil, rows.Wrong(place.at, fmt.Sprintf("column %.40q is not known to sipsum", place.id))
		case place.unit != c.unit:
			return nil, rows.Wrong(place.at, fmt.Sprintf("column %s is in %.20q; sipsum knows it in %q", place.id, place.unit, c.unit))
		}
		matched[i] = c
	}
	for _, c := range r.all {
		if c.part == p && !h.has(c.Column) {
			return nil, rows.Wrong(h.name, fmt.Sprintf("column %s is missing in this header", c.Column))
		}
	}
	return matched, nil
}

// columns says where each column goes that the workbooks found can fill.
func (r *reader) columns(books map[part]book) []food.Column {
	var all []food.Column
	for _, c := range r.all {
		_, found := books[c.part]
		if c.Fate == table.Refused || !found && c.part != remarks {
			continue
		}
		all = append(all, food.Column{ID: c.id, Number: c.Column, Name: c.name, Unit: c.unit, Decimals: c.decimals, Constituent: c.Fate == table.Mapped})
	}
	return all
}

// checkUnits makes sure that the map turns the unit printed into the
// vocabulary's.
func (c *column) checkUnits() error {
	if c.Fate != table.Mapped {
		return nil
	}
	if factor, ok := unit.Convert(c.unit, c.Constituent.Unit); !ok || factor != c.Factor {
		return fail.New(fail.Failed, fmt.Sprintf("column %s: the factor of the map is not that from %s to %s", c.Column, c.unit, c.Constituent.Unit), "")
	}
	return nil
}
