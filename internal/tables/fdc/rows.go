package fdc

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"path"
	"strconv"
	"strings"
	"unicode/utf8"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

const again = "take the file from the publisher's archive again"

// ahead is how many bytes are read at once.
const ahead = 1 << 18

// rows reads a CSV file with a header row, by name of column. Texts of a row
// share its memory: one that is kept must be cloned.
type rows struct {
	file   fs.File
	csv    *csv.Reader
	watch  *watch
	files  files
	inside string // name of the file in the folder
	name   string // for messages
	index  map[string]int
	record []string
	line   int  // on which the current row begins
	open   bool // the last line may lack its end: tools that make copies leave it out
}

// open opens a file of the release, by the publisher's name, and makes sure that
// columns are there.
func (f files) open(name string, need ...string) (*rows, error) {
	inside := f.at[name]
	file, err := f.fsys.Open(inside)
	if err != nil {
		return nil, fail.At(fail.Wrong, fail.Place{File: f.place(inside)}, "cannot be read: "+err.Error(), again)
	}
	r := &rows{
		file: file, watch: &watch{Reader: file, most: table.LongestField}, files: f, inside: inside, name: f.place(inside), index: map[string]int{},
		open: inside != name,
	}
	r.csv = csv.NewReader(bufio.NewReaderSize(r.watch, ahead))
	r.csv.ReuseRecord = true
	if err := r.header(need); err != nil {
		r.close()
		return nil, err
	}
	return r, nil
}

// place names a file in messages.
func (f files) place(name string) string { return path.Join(f.dir, name) }

func (r *rows) header(need []string) error {
	if err := r.next(); err == io.EOF {
		return fail.At(fail.Wrong, fail.Place{File: r.name}, "the file is empty", again)
	} else if err != nil {
		return err
	}
	for i, cell := range r.record {
		if i == 0 {
			cell = strings.TrimPrefix(cell, "\ufeff")
		}
		if _, twice := r.index[cell]; twice {
			return r.wrong(i, fmt.Sprintf("column %.40q stands twice", cell))
		}
		r.index[strings.Clone(cell)] = i
	}
	for _, name := range need {
		if _, ok := r.index[name]; !ok {
			return fail.At(fail.Wrong, fail.Place{File: r.name, Line: 1}, fmt.Sprintf("column %q is missing", name), again)
		}
	}
	return nil
}

func (r *rows) close() { r.file.Close() }

// column gives the place of a column in a row; -1 if the file has none.
func (r *rows) column(name string) int {
	if i, ok := r.index[name]; ok {
		return i
	}
	return -1
}

// next reads a row; it gives io.EOF after the last.
func (r *rows) next() error {
	r.watch.start = r.csv.InputOffset()
	record, err := r.csv.Read()
	var bad *csv.ParseError
	switch {
	case err == io.EOF:
		if !r.open && !r.watch.lineEnded() {
			return fail.At(fail.Wrong, fail.Place{File: r.name}, "the last line does not end: the file may be cut off", again)
		}
		return io.EOF
	case errors.Is(err, errLong):
		line, _ := r.files.lineOf(r.inside, r.watch.start)
		return fail.At(fail.Wrong, fail.Place{File: r.name, Line: line},
			fmt.Sprintf("the row that begins here is longer than %d bytes", table.LongestField), "a quotation mark may be missing; "+again)
	case errors.As(err, &bad):
		return fail.At(fail.Wrong, fail.Place{File: r.name, Line: bad.Line, Col: bad.Column}, bad.Err.Error(), again)
	case err != nil:
		return fail.At(fail.Wrong, fail.Place{File: r.name}, "cannot be read to its end: "+err.Error(), again)
	}
	r.record = record
	r.line, _ = r.csv.FieldPos(0)
	return nil
}

// text gives a field, blanks around it cut; empty if the file has no such
// column. The field is checked to be text.
func (r *rows) text(i int) (string, error) {
	if i < 0 {
		return "", nil
	}
	text := r.record[i]
	if strings.IndexByte(text, 0) >= 0 {
		return "", r.wrong(i, "a zero byte stands in this field")
	}
	if !utf8.ValidString(text) {
		return "", r.wrong(i, "this field is not UTF-8")
	}
	return strings.TrimSpace(text), nil
}

// texts gives several fields, as text does.
func (r *rows) texts(columns ...int) ([]string, error) {
	all := make([]string, len(columns))
	for i, c := range columns {
		var err error
		if all[i], err = r.text(c); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// number reads a field that is a number and not negative; None if it is blank.
func (r *rows) number(i int) (float64, error) {
	if i < 0 || r.record[i] == "" {
		return math.NaN(), nil
	}
	text := r.record[i]
	for j := range len(text) {
		if c := text[j]; (c < '0' || c > '9') && c != '.' && c != 'e' && c != 'E' && c != '+' && c != '-' {
			return 0, r.notNumber(i)
		}
	}
	x, err := strconv.ParseFloat(text, 64)
	switch {
	case err != nil:
		return 0, r.notNumber(i)
	case x < 0:
		return 0, r.wrong(i, fmt.Sprintf("%.40q is negative", text))
	}
	return x, nil
}

// whole reads a field that is a whole number, written "68" or "68.0"; blank
// gives 0.
func (r *rows) whole(i int) (uint64, error) {
	if i < 0 {
		return 0, nil
	}
	n, ok := wholeOf(r.record[i])
	if !ok {
		return 0, r.wrong(i, fmt.Sprintf("%.40q is not a whole number", r.record[i]))
	}
	return n, nil
}

// key reads a field that is the number of a food, nutrient or row: whole and
// not blank.
func (r *rows) key(i int) (uint32, error) {
	n, err := r.whole(i)
	switch {
	case err != nil:
		return 0, err
	case n == 0 || n > math.MaxUint32:
		return 0, r.wrong(i, fmt.Sprintf("%.40q is not a number that names something", r.record[i]))
	}
	return uint32(n), nil
}

// wholeOf reads "68" and, as some copies write it, "68.0".
func wholeOf(text string) (n uint64, ok bool) {
	for i := range len(text) {
		switch c := text[i]; {
		case c >= '0' && c <= '9' && i < 18:
			n = n*10 + uint64(c-'0')
		case c == '.' && i > 0 && strings.Trim(text[i+1:], "0") == "":
			return n, true
		default:
			return 0, false
		}
	}
	return n, true
}

func (r *rows) notNumber(i int) error {
	return r.wrong(i, fmt.Sprintf("%.40q is not a number", r.record[i]))
}

// wrong makes the error of a field of the current row.
func (r *rows) wrong(i int, what string) error {
	line, col := r.csv.FieldPos(i)
	return fail.At(fail.Wrong, fail.Place{File: r.name, Line: line, Col: col}, what, again)
}
