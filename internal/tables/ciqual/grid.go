package ciqual

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"
	"unicode/utf8"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

// grid is rows of cells: a CSV file or a sheet of a workbook.
type grid interface {
	next() ([]string, error) // io.EOF after the last row
	wrong(cell int, what string) error
	close()
}

// openGrid opens the workbook of a folder.
func (f *folder) openGrid() (grid, error) {
	if strings.EqualFold(path.Ext(f.book), ".csv") {
		return openCSV(f.text, f.dir, f.book)
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
		g := &sheetGrid{rows: rows}
		first, err := g.next()
		if err == nil && slices.Contains(first, codeHeading) {
			g.first = first
			return g, nil
		}
		g.close()
		if err != nil && err != io.EOF {
			return nil, err
		}
	}
	at := fail.Place{File: path.Join(f.dir, f.book)}
	return nil, fail.At(fail.Wrong, at, "has no sheet whose first row names "+codeHeading, again)
}

// sheetGrid is a sheet, each row as long as the first.
type sheetGrid struct {
	rows  *table.SheetRows
	first []string // not yet given
	width int
}

func (g *sheetGrid) close() { g.rows.Close() }

func (g *sheetGrid) next() ([]string, error) {
	if first := g.first; first != nil {
		g.first = nil
		return first, nil
	}
	row, err := g.rows.Next()
	if err != nil {
		return nil, err
	}
	if g.width == 0 {
		g.width = len(row)
	}
	if len(row) > g.width {
		return nil, g.wrong(g.width, "this cell stands beyond the last heading")
	}
	for i, text := range row {
		if what := notText(text); what != "" {
			return nil, g.wrong(i, what)
		}
	}
	for len(row) < g.width {
		row = append(row, "")
	}
	return row, nil
}

func (g *sheetGrid) wrong(cell int, what string) error { return g.rows.Wrong(cell, what) }

// csvGrid is a file with ";" between its fields.
type csvGrid struct {
	file  fs.File
	in    *csv.Reader
	last  *lastByte
	name  string
	begun bool
}

func openCSV(files fs.FS, dir, name string) (*csvGrid, error) {
	file, err := files.Open(name)
	if err != nil {
		return nil, fail.Because(fail.Wrong, err, "cannot read "+path.Join(dir, name), again)
	}
	g := &csvGrid{file: file, last: &lastByte{in: file}, name: path.Join(dir, name)}
	g.in = csv.NewReader(g.last)
	g.in.Comma = ';'
	g.in.ReuseRecord = true
	return g, nil
}

func (g *csvGrid) close() { g.file.Close() }

func (g *csvGrid) next() ([]string, error) {
	row, err := g.in.Read()
	var bad *csv.ParseError
	switch {
	case err == io.EOF && g.last.seen && g.last.byte != '\n':
		return nil, fail.At(fail.Wrong, fail.Place{File: g.name}, "the last line does not end: the file may be cut off", again)
	case err == io.EOF:
		return nil, io.EOF
	case errors.As(err, &bad):
		return nil, fail.At(fail.Wrong, fail.Place{File: g.name, Line: bad.Line, Col: bad.Column}, bad.Err.Error(), again)
	case err != nil:
		return nil, fail.Because(fail.Failed, err, "cannot read "+g.name, "")
	}
	for i, text := range row {
		if what := notText(text); what != "" {
			return nil, g.wrong(i, what)
		}
	}
	if !g.begun {
		g.begun, row[0] = true, strings.TrimPrefix(row[0], "\ufeff")
	}
	return row, nil
}

func (g *csvGrid) wrong(cell int, what string) error {
	line, col := g.in.FieldPos(cell)
	return fail.At(fail.Wrong, fail.Place{File: g.name, Line: line, Col: col}, what, again)
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

// lastByte remembers the last byte read.
type lastByte struct {
	in   io.Reader
	byte byte
	seen bool
}

func (l *lastByte) Read(p []byte) (int, error) {
	n, err := l.in.Read(p)
	if n > 0 {
		l.byte, l.seen = p[n-1], true
	}
	return n, err
}
