package table

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"path"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"sipsum/internal/fail"
)

// LongestField is many times the longest text that a published table holds, in
// bytes.
const LongestField = 1 << 20

// Rows reads a CSV file with a header row, in UTF-8, by name of column. Every
// fault names file, line and column.
type Rows struct {
	Header []string // as written
	file   fs.File
	csv    *csv.Reader
	tail   *lastByte
	name   string // for messages
	index  map[string]int
	record []string
	again  string // what to do about a damaged file
	open   bool   // the last line need not end
}

// OpenRows opens a file and reads its header. rename gives the name by which a
// header cell is asked for; again is the advice for a damaged file.
func OpenRows(fsys fs.FS, dir, name string, rename func(cell string) string, again string) (*Rows, error) {
	file, err := fsys.Open(name)
	if err != nil {
		return nil, fail.At(fail.Wrong, fail.Place{File: path.Join(dir, name)}, "cannot be read: "+err.Error(), again)
	}
	r := &Rows{file: file, tail: &lastByte{Reader: file}, name: path.Join(dir, name), index: map[string]int{}, again: again}
	r.csv = csv.NewReader(r.tail)
	if err := r.header(rename); err != nil {
		r.Close()
		return nil, err
	}
	return r, nil
}

func (r *Rows) header(rename func(string) string) error {
	if err := r.read(); err == io.EOF {
		return fail.At(fail.Wrong, fail.Place{File: r.name}, "the file is empty", r.again)
	} else if err != nil {
		return err
	}
	r.record[0] = strings.TrimPrefix(r.record[0], "\ufeff")
	r.Header = slices.Clone(r.record)
	for i, cell := range r.Header {
		name := rename(cell)
		if _, twice := r.index[name]; twice {
			return r.wrong(i, fmt.Sprintf("column %.40q stands twice", name), r.again)
		}
		r.index[name] = i
	}
	return nil
}

// Close closes the file.
func (r *Rows) Close() { r.file.Close() }

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
func (r *Rows) Next() error { return r.read() }

func (r *Rows) read() error {
	record, err := r.csv.Read()
	var bad *csv.ParseError
	switch {
	case err == io.EOF:
		if !r.open && !r.tail.newline() {
			return fail.At(fail.Wrong, fail.Place{File: r.name}, "the last line does not end: the file may be cut off", r.again)
		}
		return io.EOF
	case errors.As(err, &bad):
		return fail.At(fail.Wrong, fail.Place{File: r.name, Line: bad.Line, Col: bad.Column}, bad.Err.Error(), r.again)
	case err != nil:
		return fail.Because(fail.Failed, err, "cannot read "+r.name, "")
	}
	r.record = record
	for i, text := range record {
		if len(text) > LongestField {
			return r.wrong(i, fmt.Sprintf("this field is longer than %d bytes", LongestField), r.again)
		}
		if strings.IndexByte(text, 0) >= 0 {
			return r.wrong(i, "a zero byte stands in this field", r.again)
		}
		if !utf8.ValidString(text) {
			return r.wrong(i, "this field is not UTF-8", r.again)
		}
	}
	return nil
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
func (r *Rows) Wrong(column, what string) error { return r.wrong(r.index[column], what, r.again) }

func (r *Rows) wrong(field int, what, do string) error {
	line, col := r.csv.FieldPos(field)
	return fail.At(fail.Wrong, fail.Place{File: r.name, Line: line, Col: col}, what, do)
}

// lastByte remembers the last byte that went through it.
type lastByte struct {
	io.Reader
	last byte
	any  bool
}

func (l *lastByte) Read(p []byte) (int, error) {
	n, err := l.Reader.Read(p)
	if n > 0 {
		l.last, l.any = p[n-1], true
	}
	return n, err
}

// newline reports whether what went through ended with a line end, or was
// nothing.
func (l *lastByte) newline() bool { return !l.any || l.last == '\n' }
