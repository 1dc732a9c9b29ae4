package generic

import (
	"io"
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

// mapping is a mapping file.
type mapping struct {
	about   map[role]string
	places  map[role]fail.Place // of the rows in about
	marks   map[string]role
	below   []string // what stands before a limit
	columns []column // in the order of the file
	header  int      // number of the row with the names
	comma   rune
	decimal rune
	state   estimate.State
	rest    bool // ignore every column not named
}

// fields of the mapping file.
var fields = []string{"role", "column", "as", "unit", "per", "why"}

// readMapping reads a mapping file and collects its faults.
func readMapping(files fs.FS, dir, name string) (*mapping, error) {
	cells, err := table.OpenCSV(files, dir, name, ',', "mend the mapping file")
	if err != nil {
		return nil, err
	}
	defer cells.Close()
	m := &mapping{
		about: map[role]string{}, places: map[role]fail.Place{}, marks: map[string]role{},
		header: 1, comma: ',', decimal: '.', state: estimate.Calculated,
	}
	at := fail.Place{File: path.Join(dir, name), Line: 1}
	header, err := cells.Next()
	if err == io.EOF {
		return nil, fail.At(fail.Wrong, fail.Place{File: at.File}, "the file is empty", "begin it with "+strings.Join(fields, ","))
	} else if err != nil {
		return nil, err
	}
	if !slices.Equal(header, fields) {
		return nil, fail.At(fail.Wrong, at, "the first line is not that of a mapping file", "begin it with "+strings.Join(fields, ","))
	}
	faults := &fail.List{}
	for {
		row, err := cells.Next()
		if err == io.EOF {
			break
		} else if err != nil {
			return nil, err
		}
		at.Line = cells.Number()
		if len(row) != len(fields) {
			faults.Add(at, "each row has "+strings.Join(fields, ","), "%d cells where there should be %d", len(row), len(fields))
			continue
		}
		m.take(at, row, faults)
	}
	m.finish(fail.Place{File: at.File}, faults)
	return m, faults.Err(fail.Wrong)
}

// take takes a row over.
func (m *mapping) take(at fail.Place, row []string, faults *fail.List) {
	r, as := role(row[0]), row[2]
	_, once := about[r]
	several, ofColumn := ofColumns[r]
	switch {
	case once:
		if _, twice := m.about[r]; twice || as == "" || row[1] != "" {
			faults.Add(at, "write it once, with its text in the column as", "%s stands twice, has no text, or names a column", r)
		}
		m.about[r], m.places[r] = as, at
	case marks[r]:
		if as == "" || m.marks[as] != "" {
			faults.Add(at, "write the mark as it stands in the cells, in the column as", "%s has no mark, or its mark stands twice", r)
		}
		if m.marks[as] = r; r == roleBelow {
			m.below = append(m.below, as)
		}
	case ofColumn:
		c := column{role: r, name: row[1], as: as, unit: row[3], per: row[4], place: at, sd: -1, samples: -1}
		if r == roleIgnore && c.name == "*" {
			m.rest = true
			return
		}
		m.check(&c, several, faults)
		m.columns = append(m.columns, c)
	default:
		faults.Add(at, "see the list of roles: table formats", "%.40q is not a role", row[0])
	}
}

// finish checks what concerns several rows.
func (m *mapping) finish(at fail.Place, faults *fail.List) {
	for _, r := range []role{roleFile, roleTitle, roleEdition, roleLicence} {
		if m.about[r] == "" {
			faults.Add(at, "add a row: "+string(r)+",,TEXT,,,", "there is no row %s", r)
		}
	}
	for _, r := range []role{roleCode, roleName, roleValue} {
		if !slices.ContainsFunc(m.columns, func(c column) bool { return c.role == r }) {
			faults.Add(at, "add a row: "+string(r)+",COLUMN,,,,", "no column is the %s", r)
		}
	}
	for i, c := range m.columns {
		if c.role != roleSD && c.role != roleN {
			continue
		}
		of := slices.IndexFunc(m.columns, func(v column) bool { return v.role == roleValue && v.name == c.as })
		switch {
		case of < 0:
			faults.Add(c.place, "name the column of the value in as", "%s of %.60q, which is not the column of a value", c.role, c.as)
		case c.role == roleSD:
			m.columns[of].sd = i
		default:
			m.columns[of].samples = i
		}
	}
	m.words(faults)
}

// words reads the settings that are one of a few words.
func (m *mapping) words(faults *fail.List) {
	if file := m.about[roleFile]; file != "" && !fs.ValidPath(file) {
		faults.Add(m.places[roleFile], "put the table beside the mapping file", "%.60q leads outside of the folder", file)
	}
	if strings.EqualFold(path.Ext(m.about[roleFile]), ".tsv") {
		m.comma = '\t'
	}
	choose(m, faults, roleSeparator, map[string]rune{"comma": ',', "semicolon": ';', "tab": '\t'}, &m.comma)
	choose(m, faults, roleDecimal, map[string]rune{"point": '.', "comma": ','}, &m.decimal)
	choose(m, faults, roleState, map[string]estimate.State{"measured": estimate.Measured, "calculated": estimate.Calculated}, &m.state)
	if text, ok := m.about[roleHeader]; ok {
		n, err := strconv.Atoi(text)
		if err != nil || n < 1 {
			faults.Add(m.places[roleHeader], "count from 1", "%.40q is not the number of a row", text)
		}
		m.header = n
	}
}

// choose sets a value by a word of the mapping file.
func choose[T any](m *mapping, faults *fail.List, r role, words map[string]T, into *T) {
	text, ok := m.about[r]
	if !ok {
		return
	}
	value, ok := words[text]
	if !ok {
		names := make([]string, 0, len(words))
		for name := range words {
			names = append(names, name)
		}
		slices.Sort(names)
		faults.Add(m.places[r], "write "+strings.Join(names, " or "), "%s is %.40q", r, text)
		return
	}
	*into = value
}
