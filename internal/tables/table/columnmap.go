package table

import (
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// Fate is what becomes of a column of a table.
type Fate uint8

// The fates.
const (
	Refused   Fate = iota // not a constituent, or one that would mislead
	Kept                  // under "table:number", in the unit printed
	Mapped                // a constituent of the vocabulary
	Deviation             // the standard deviation of another column
)

// Mapping is one row of a column map.
type Mapping struct {
	Column      string // the publisher's number or code
	Fate        Fate
	Constituent *constituent.Constituent // Mapped only
	Of          string                   // Deviation only: the column whose spread it is
	Factor      float64                  // from the printed unit to the unit stored
	Why         string
}

// ColumnMap is data/maps/<format>.csv.
type ColumnMap struct {
	Rows     []Mapping // in the order of the file
	byColumn map[string]Mapping
}

// Find gives the row of a column.
func (m *ColumnMap) Find(column string) (Mapping, bool) {
	row, ok := m.byColumn[column]
	return row, ok
}

// ID gives where the values of a column are kept in the table with the given
// id. It is meant for kept and mapped columns.
func (m Mapping) ID(tableID string) constituent.ID {
	if m.Fate == Mapped {
		return m.Constituent.ID
	}
	return constituent.ID(tableID + ":" + m.Column)
}

// ReadMap reads the column map of a format. A fault in it is one of sipsum's own
// data, and panics.
func ReadMap(format string) *ColumnMap {
	m := &ColumnMap{byColumn: map[string]Mapping{}}
	taken := map[constituent.ID]string{}
	for _, row := range embedded.Rows("maps/" + format + ".csv") {
		mapping := parseMapping(row)
		if _, twice := m.byColumn[mapping.Column]; twice {
			row.Fail("column %s stands twice", mapping.Column)
		}
		if mapping.Fate == Mapped {
			if other, twice := taken[mapping.Constituent.ID]; twice {
				row.Fail("columns %s and %s are both %s", other, mapping.Column, mapping.Constituent.ID)
			}
			taken[mapping.Constituent.ID] = mapping.Column
		}
		m.byColumn[mapping.Column] = mapping
		m.Rows = append(m.Rows, mapping)
	}
	return m
}

// parseMapping reads a row of a map. The constituent is an id or alias of the
// vocabulary, or one of the words keep, refuse and "sd COLUMN".
func parseMapping(row embedded.Row) Mapping {
	m := Mapping{Column: row.Text("column"), Factor: 1, Why: row.Text("why")}
	if factor, ok := row.Optional("factor"); ok {
		if factor <= 0 {
			row.Fail("factor %g is not positive", factor)
		}
		m.Factor = factor
	}
	word := row.Text("constituent")
	of, deviation := strings.CutPrefix(word, "sd ")
	switch {
	case word == "refuse":
		m.Fate = Refused
	case word == "keep":
		m.Fate = Kept
	case deviation:
		m.Fate, m.Of = Deviation, of
	default:
		c, ok := constituent.Find(word)
		if !ok {
			row.Fail("%q is not in the vocabulary", word)
		}
		m.Fate, m.Constituent = Mapped, c
	}
	if m.Fate == Refused && m.Why == "" {
		row.Fail("column %s is refused without a reason", m.Column)
	}
	return m
}
