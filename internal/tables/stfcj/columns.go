package stfcj

import (
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"

	"sipsum/data"
	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
	"sipsum/internal/unit"
)

// column is a row of data/maps/stfcj_columns.csv with its row of the map:
// column,part,name,unit,decimals,kind,zero,trace,source.
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
func (r *reader) data() error {
	mapping, err := table.ReadMap(name)
	if err != nil {
		return err
	}
	if r.rules, err = table.GroupsOf(name); err != nil {
		return err
	}
	if r.wrong, err = embedded("maps/stfcj_misprints.csv"); err != nil {
		return err
	}
	rows, err := embedded("maps/stfcj_columns.csv")
	if err != nil {
		return err
	}
	r.byID = map[string]*column{}
	for _, row := range rows {
		c, err := parseColumn(row)
		if err != nil {
			return fmt.Errorf("stfcj_columns.csv: column %s: %w", row[0], err)
		}
		var ok bool
		if c.Mapping, ok = mapping.Find(row[0]); !ok {
			return fmt.Errorf("stfcj_columns.csv: column %s is not in stfcj.csv", row[0])
		}
		c.id = c.ID(r.tableID)
		r.byID[row[0]] = c
		r.all = append(r.all, c)
	}
	return nil
}

// embedded reads a small file of sipsum's own, without its header.
func embedded(name string) ([][]string, error) {
	in, err := data.FS.Open(name)
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

// misprinted reports whether a cell is a known misprint of the publisher, a row
// of data/maps/stfcj_misprints.csv: code,column,printed,why.
func (r *reader) misprinted(code, column, printed string) bool {
	return slices.ContainsFunc(r.wrong, func(row []string) bool { return row[0] == code && row[1] == column && row[2] == printed })
}

func parseColumn(row []string) (*column, error) {
	c := &column{part: part(row[1]), name: row[2], unit: row[3], derived: row[5] == "derived"}
	var err error
	if c.decimals, err = strconv.Atoi(row[4]); err != nil {
		return nil, err
	}
	least := math.Pow10(-c.decimals)
	for i, into := range map[int]*float64{6: &c.zero, 7: &c.trace} {
		share, err := strconv.ParseFloat(row[i], 64)
		if err != nil || share <= 0 {
			return nil, fmt.Errorf("%q is not a share of the least amount", row[i])
		}
		*into = share * least
	}
	return c, nil
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
