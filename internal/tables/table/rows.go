package table

import (
	"fmt"
	"io"
	"io/fs"
	"math"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/fail"
)

// Rows reads a CSV file with a header row, in UTF-8, by name of column. Every
// fault names file, line and column.
type Rows struct {
	Header []string // as written
	csvFile
	index  map[string]int
	record []string
}

// OpenRows opens a file and reads its header. rename gives the name by which a
// header cell is asked for; again is the advice for a damaged file.
func OpenRows(fsys fs.FS, dir, name string, rename func(cell string) string, again string) (*Rows, error) {
	file, err := openCSVFile(fsys, dir, name, "field", again)
	if err != nil {
		return nil, err
	}
	r := &Rows{csvFile: file, index: map[string]int{}}
	if err := r.header(rename); err != nil {
		r.Close()
		return nil, err
	}
	return r, nil
}

func (r *Rows) header(rename func(string) string) error {
	if err := r.Next(); err == io.EOF {
		return fail.At(fail.Wrong, fail.Place{File: r.name}, "the file is empty", r.again)
	} else if err != nil {
		return err
	}
	r.Header = slices.Clone(r.record)
	for i, cell := range r.Header {
		name := rename(cell)
		if _, twice := r.index[name]; twice {
			return r.wrong(i, fmt.Sprintf("column %.40q stands twice", name))
		}
		r.index[name] = i
	}
	return nil
}

// Need makes sure that columns are there.
func (r *Rows) Need(columns ...string) error {
	for _, c := range columns {
		if _, ok := r.index[c]; !ok {
			return fail.At(fail.Wrong, fail.Place{File: r.name, Line: 1}, fmt.Sprintf("column %q is missing", c), r.again)
		}
	}
	return nil
}

// MayEndOpen accepts a file whose last line has no line end, for publishers who
// write none. Its last field cannot be told from one that is cut off.
func (r *Rows) MayEndOpen() { r.open = true }

// Next reads a row; it gives io.EOF after the last.
func (r *Rows) Next() (err error) {
	r.record, err = r.read()
	return err
}

// Each calls use for every row that is left.
func (r *Rows) Each(use func() error) error {
	for {
		if err := r.Next(); err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
		if err := use(); err != nil {
			return err
		}
	}
}

// Text gives a field of the current row.
func (r *Rows) Text(column string) string { return r.record[r.index[column]] }

// Number reads a field; blank gives NaN (not stated).
func (r *Rows) Number(column string) (float64, error) {
	text := r.Text(column)
	if text == "" {
		return math.NaN(), nil
	}
	if strings.Trim(text, "0123456789.eE+-") != "" {
		return 0, r.Wrong(column, fmt.Sprintf("%.40q is not a number", text))
	}
	x, err := strconv.ParseFloat(text, 64)
	switch {
	case err != nil:
		return 0, r.Wrong(column, fmt.Sprintf("%.40q is not a number", text))
	case x < 0:
		return 0, r.Wrong(column, fmt.Sprintf("%.40q is negative", text))
	}
	return x, nil
}

// Wrong makes the error of a field of the current row.
func (r *Rows) Wrong(column, what string) error { return r.wrong(r.index[column], what) }
