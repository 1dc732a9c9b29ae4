package table

import (
	"encoding/csv"
	"fmt"
	"strconv"

	"sipsum/data"
	"sipsum/internal/constituent"
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

// ReadMap reads the column map of a format. An error is a fault of sipsum's own
// data.
func ReadMap(format string) (*ColumnMap, error) {
	name := "maps/" + format + ".csv"
	file, err := data.FS.Open(name)
	if err != nil {
		return nil, fmt.Errorf("column map: %w", err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("column map %s: %w", name, err)
	}
	m := &ColumnMap{byColumn: make(map[string]Mapping, len(rows))}
	taken := map[constituent.ID]string{}
	for _, row := range rows[1:] {
		mapping, err := parseMapping(row)
		if err != nil {
			return nil, fmt.Errorf("column map %s: column %s: %w", name, row[0], err)
		}
		if _, twice := m.byColumn[mapping.Column]; twice {
			return nil, fmt.Errorf("column map %s: column %s stands twice", name, row[0])
		}
		if mapping.Fate == Mapped {
			if other, twice := taken[mapping.Constituent.ID]; twice {
				return nil, fmt.Errorf("column map %s: columns %s and %s are both %s", name, other, row[0], mapping.Constituent.ID)
			}
			taken[mapping.Constituent.ID] = row[0]
		}
		m.byColumn[mapping.Column] = mapping
		m.Rows = append(m.Rows, mapping)
	}
	return m, nil
}

// parseMapping reads column,constituent,factor,why. The constituent is an id or
// alias of the vocabulary, or one of the words keep, refuse and "sd COLUMN".
func parseMapping(row []string) (Mapping, error) {
	m := Mapping{Column: row[0], Factor: 1, Why: row[3]}
	if row[2] != "" {
		factor, err := strconv.ParseFloat(row[2], 64)
		if err != nil || factor <= 0 {
			return m, fmt.Errorf("factor %q is not a positive number", row[2])
		}
		m.Factor = factor
	}
	switch word := row[1]; {
	case word == "refuse":
		m.Fate = Refused
	case word == "keep":
		m.Fate = Kept
	case len(word) > 3 && word[:3] == "sd ":
		m.Fate, m.Of = Deviation, word[3:]
	default:
		c, ok := constituent.Find(word)
		if !ok {
			return m, fmt.Errorf("%q is not in the vocabulary", word)
		}
		m.Fate, m.Constituent = Mapped, c
	}
	if m.Fate == Refused && m.Why == "" {
		return m, fmt.Errorf("is refused without a reason")
	}
	return m, nil
}
