package table

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
)

// Cells is a sheet that is read row by row: of a workbook (SheetRows), or a CSV
// file (CSVRows). It knows nothing of a header.
type Cells interface {
	// Next reads the next row that has a filled cell; io.EOF after the last. The
	// cells are valid until the next call.
	Next() ([]string, error)
	// Number gives the number of the current row or line.
	Number() int
	// Wrong makes the error of a cell of the current row; column counts from 0.
	Wrong(column int, what string) error
	Close()
}

// CSVRows reads a text file of separated cells, quoted with " where needed.
type CSVRows struct {
	file  fs.File
	csv   *csv.Reader
	tail  *lastByte
	name  string // for messages
	again string // what to do about a damaged file
	cells int    // in the current row
}

// OpenCSV opens a text file of cells separated by separator. dir names its place
// in messages; again is the advice for a damaged file.
func OpenCSV(fsys fs.FS, dir, name string, separator rune, again string) (*CSVRows, error) {
	file, err := fsys.Open(name)
	if err != nil {
		return nil, fail.At(fail.Wrong, fail.Place{File: path.Join(dir, name)}, "cannot be read: "+err.Error(), again)
	}
	r := &CSVRows{file: file, tail: &lastByte{Reader: file}, name: path.Join(dir, name), again: again}
	r.csv = csv.NewReader(r.tail)
	r.csv.Comma, r.csv.FieldsPerRecord, r.csv.ReuseRecord = separator, -1, true
	return r, nil
}

// Close closes the file.
func (r *CSVRows) Close() { r.file.Close() }

// Next reads the next row that has a filled cell.
func (r *CSVRows) Next() ([]string, error) {
	for first := r.cells == 0; ; first = false {
		record, err := r.csv.Read()
		var bad *csv.ParseError
		switch {
		case err == io.EOF && !r.tail.newline():
			return nil, fail.At(fail.Wrong, fail.Place{File: r.name}, "the last line does not end: the file may be cut off", r.again)
		case err == io.EOF:
			return nil, io.EOF
		case errors.As(err, &bad):
			return nil, fail.At(fail.Wrong, fail.Place{File: r.name, Line: bad.Line, Col: bad.Column}, bad.Err.Error(), r.again)
		case err != nil:
			return nil, fail.Because(fail.Failed, err, "cannot read "+r.name, "")
		}
		r.cells = len(record)
		if first {
			record[0] = strings.TrimPrefix(record[0], "\ufeff")
		}
		if err := r.check(record); err != nil {
			return nil, err
		}
		if slices.ContainsFunc(record, func(cell string) bool { return cell != "" }) {
			return record, nil
		}
	}
}

// check refuses what no published table holds.
func (r *CSVRows) check(record []string) error {
	for i, text := range record {
		switch {
		case len(text) > LongestField:
			return r.Wrong(i, fmt.Sprintf("this cell is longer than %d bytes", LongestField))
		case strings.IndexByte(text, 0) >= 0:
			return r.Wrong(i, "a zero byte stands in this cell")
		case !utf8.ValidString(text):
			return r.Wrong(i, "this cell is not UTF-8")
		}
	}
	return nil
}

// Number gives the line on which the current row begins.
func (r *CSVRows) Number() int {
	if r.cells == 0 {
		return 0
	}
	line, _ := r.csv.FieldPos(0)
	return line
}

// Wrong makes the error of a cell of the current row; column counts from 0. One
// beyond the last cell is told at the last.
func (r *CSVRows) Wrong(column int, what string) error {
	if r.cells == 0 {
		return fail.At(fail.Wrong, fail.Place{File: r.name}, what, r.again)
	}
	line, col := r.csv.FieldPos(min(column, r.cells-1))
	return fail.At(fail.Wrong, fail.Place{File: r.name, Line: line, Col: col}, what, r.again)
}
