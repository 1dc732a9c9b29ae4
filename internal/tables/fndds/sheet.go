package fndds

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/tables/table"
)

// sheet is the first sheet of the workbook, read by name of column.
type sheet struct {
	*table.SheetRows
	title  string   // above the header
	header []string // names on one line
	index  map[string]int
	cells  []string
}

// titleRows is how many rows may stand above the header.
const titleRows = 5

// openSheet reads the rows up to the header; errOther if there is none.
func openSheet(book *table.Workbook) (*sheet, error) {
	raw, err := book.Rows(book.Sheets()[0])
	if err != nil {
		return nil, err
	}
	s := &sheet{SheetRows: raw, index: map[string]int{}}
	for range titleRows {
		cells, err := raw.Next()
		if err == io.EOF {
			break
		} else if err != nil {
			raw.Close()
			return nil, err
		}
		if oneLine(cells[0]) != codeColumn {
			s.title += oneLine(strings.Join(cells, " ")) + " "
			continue
		}
		if err := s.name(cells); err != nil {
			raw.Close()
			return nil, err
		}
		if _, ok := s.index[energyColumn]; !ok {
			break
		}
		return s, nil
	}
	raw.Close()
	return nil, errOther
}

// name reads the header.
func (s *sheet) name(cells []string) error {
	for i, cell := range cells {
		name := oneLine(cell)
		if _, twice := s.index[name]; twice {
			return s.SheetRows.Wrong(i, fmt.Sprintf("column %.40q stands twice", name))
		}
		s.index[name] = i
		s.header = append(s.header, name)
	}
	return nil
}

func (s *sheet) columns() []string { return s.header }

// Next reads a row.
func (s *sheet) Next() error {
	cells, err := s.SheetRows.Next()
	if err != nil {
		return err
	}
	if len(cells) > len(s.header) {
		return s.SheetRows.Wrong(len(s.header), "this cell is beyond the last column that has a name")
	}
	s.cells = append(s.cells[:0], cells...)
	s.cells = append(s.cells, slices.Repeat([]string{""}, len(s.header)-len(cells))...)
	return nil
}

// Text gives a cell of the current row.
func (s *sheet) Text(column string) string { return s.cells[s.index[column]] }

// Number reads a cell; blank gives NaN (not stated).
func (s *sheet) Number(column string) (float64, error) {
	text := s.Text(column)
	if text == "" {
		return math.NaN(), nil
	}
	x, err := strconv.ParseFloat(text, 64)
	switch {
	case err != nil || strings.Trim(text, "0123456789.eE+-") != "":
		return 0, s.Wrong(column, fmt.Sprintf("%.40q is not a number", text))
	case x < 0:
		return 0, s.Wrong(column, fmt.Sprintf("%.40q is negative", text))
	}
	return x, nil
}

// Wrong makes the error of a cell of the current row.
func (s *sheet) Wrong(column, what string) error {
	return s.SheetRows.Wrong(s.index[column], what)
}
