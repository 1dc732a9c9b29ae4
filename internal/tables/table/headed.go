package table

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
)

// HeadedSheet reads a sheet of a workbook by name of column. The names are those
// of its header row, on one line each; what stands above it is its title.
type HeadedSheet struct {
	*SheetRows
	Title  string
	Header []string
	index  map[string]int
	cells  []string
}

// titleRows is how many filled rows may stand above a header.
const titleRows = 5

// Headed opens a sheet and reads it up to the row that isHeader recognises; nil
// if none of the first rows is one.
func (w *Workbook) Headed(name string, isHeader func(cells []string) bool) (*HeadedSheet, error) {
	rows, err := w.Rows(name)
	if err != nil {
		return nil, err
	}
	s := &HeadedSheet{SheetRows: rows, index: map[string]int{}}
	found, err := s.findHeader(isHeader)
	if err != nil || !found {
		rows.Close()
		return nil, err
	}
	return s, nil
}

// findHeader reads rows until one is the header.
func (s *HeadedSheet) findHeader(isHeader func([]string) bool) (bool, error) {
	for range titleRows {
		cells, err := s.SheetRows.Next()
		if err == io.EOF {
			return false, nil
		} else if err != nil {
			return false, err
		}
		if isHeader(cells) {
			return true, s.name(cells)
		}
		s.Title += OneLine(strings.Join(cells, " ")) + " "
	}
	return false, nil
}

// name takes the header apart.
func (s *HeadedSheet) name(cells []string) error {
	for i, cell := range cells {
		name := OneLine(cell)
		if _, twice := s.index[name]; twice {
			return s.SheetRows.Wrong(i, fmt.Sprintf("column %.40q stands twice", name))
		}
		s.index[name] = i
		s.Header = append(s.Header, name)
	}
	return nil
}

// OneLine writes a text on one line, with single blanks.
func OneLine(cell string) string { return strings.Join(strings.Fields(cell), " ") }

// Has tells whether the header has a column.
func (s *HeadedSheet) Has(column string) bool {
	_, ok := s.index[column]
	return ok
}

// Next reads a row; io.EOF after the last.
func (s *HeadedSheet) Next() error {
	cells, err := s.SheetRows.Next()
	if err != nil {
		return err
	}
	if len(cells) > len(s.Header) {
		return s.SheetRows.Wrong(len(s.Header), "this cell is beyond the last column that has a name")
	}
	s.cells = append(s.cells[:0], cells...)
	s.cells = append(s.cells, slices.Repeat([]string{""}, len(s.Header)-len(cells))...)
	return nil
}

// Text gives a cell of the current row.
func (s *HeadedSheet) Text(column string) string { return s.cells[s.index[column]] }

// Number reads a cell; blank gives NaN (not stated).
func (s *HeadedSheet) Number(column string) (float64, error) {
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
func (s *HeadedSheet) Wrong(column, what string) error {
	return s.SheetRows.Wrong(s.index[column], what)
}
