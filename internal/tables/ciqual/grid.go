package ciqual

import (
	"fmt"
	"io"
	"path"
	"slices"
	"strings"
	"unicode/utf8"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

// grid is rows of cells, each as long as the first: a CSV file with ";" between
// its cells or a sheet of a workbook.
type grid struct {
	table.Cells
	first []string // read to recognise a sheet, not yet given
	width int
	sheet bool // whose rows leave empty cells at their end out
}

// openGrid opens the workbook of a folder.
func (f *folder) openGrid() (*grid, error) {
	if strings.EqualFold(path.Ext(f.book), ".csv") {
		rows, err := table.OpenCSV(f.text, f.dir, f.book, ';', again)
		return &grid{Cells: rows}, err
	}
	book, err := table.OpenWorkbook(f.raw, f.dir, f.book, again)
	if err != nil {
		return nil, err
	}
	for _, name := range book.Sheets() {
		rows, err := book.Rows(name)
		if err != nil {
			return nil, err
		}
		g := &grid{Cells: rows, sheet: true}
		first, err := g.next()
		if err == nil && slices.Contains(first, codeHeading) {
			g.first = first
			return g, nil
		}
		g.Close()
		if err != nil && err != io.EOF {
			return nil, err
		}
	}
	at := fail.Place{File: path.Join(f.dir, f.book)}
	return nil, fail.At(fail.Wrong, at, "has no sheet whose first row names "+codeHeading, again)
}

// next reads a row; it gives io.EOF after the last.
func (g *grid) next() ([]string, error) {
	if first := g.first; first != nil {
		g.first = nil
		return first, nil
	}
	row, err := g.Next()
	if err != nil {
		return nil, err
	}
	if g.width == 0 {
		g.width = len(row)
	}
	switch {
	case len(row) > g.width:
		return nil, g.Wrong(g.width, "this cell stands beyond the last heading")
	case len(row) < g.width && !g.sheet:
		return nil, g.Wrong(len(row)-1, fmt.Sprintf("%d cells where there are %d headings", len(row), g.width))
	}
	for i, text := range row {
		if what := notText(text); what != "" {
			return nil, g.Wrong(i, what)
		}
	}
	for len(row) < g.width {
		row = append(row, "")
	}
	return row, nil
}

// notText says what makes a text unfit, empty if nothing does.
func notText(text string) string {
	switch {
	case len(text) > table.LongestField:
		return fmt.Sprintf("this text is longer than %d bytes", table.LongestField)
	case strings.IndexByte(text, 0) >= 0:
		return "a zero byte stands in this text"
	case !utf8.ValidString(text) || strings.ContainsRune(text, utf8.RuneError):
		return "this text is neither UTF-8 nor Windows-1252"
	}
	return ""
}
