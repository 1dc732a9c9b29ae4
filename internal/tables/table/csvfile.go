package table

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"strings"
	"unicode/utf8"

	"sipsum/internal/fail"
)

// LongestField is many times the longest text that a published table holds, in
// bytes.
const LongestField = 1 << 20

// csvFile is a text file of separated cells, quoted with " where needed. Every
// fault names file, line and column.
type csvFile struct {
	file  fs.File
	csv   *csv.Reader
	tail  *lastByte
	name  string // for messages
	again string // what to do about a damaged file
	piece string // what messages call a part of a row: a field of a column, a cell of a sheet
	begun bool
	open  bool // the last line need not end
}

// openCSVFile opens a file; dir names its place in messages.
func openCSVFile(fsys fs.FS, dir, name, piece, again string) (csvFile, error) {
	file, err := fsys.Open(name)
	if err != nil {
		return csvFile{}, fail.At(fail.Wrong, fail.Place{File: path.Join(dir, name)}, "cannot be read: "+err.Error(), again)
	}
	tail := &lastByte{Reader: file}
	return csvFile{file: file, csv: csv.NewReader(tail), tail: tail, name: path.Join(dir, name), piece: piece, again: again}, nil
}

// Close closes the file.
func (c *csvFile) Close() { c.file.Close() }

// read reads a row; it gives io.EOF after the last.
func (c *csvFile) read() ([]string, error) {
	record, err := c.csv.Read()
	var bad *csv.ParseError
	switch {
	case err == io.EOF && !c.open && !c.tail.newline():
		return nil, fail.At(fail.Wrong, fail.Place{File: c.name}, "the last line does not end: the file may be cut off", c.again)
	case err == io.EOF:
		return nil, io.EOF
	case errors.As(err, &bad):
		return nil, fail.At(fail.Wrong, fail.Place{File: c.name, Line: bad.Line, Col: bad.Column}, bad.Err.Error(), c.again)
	case err != nil:
		return nil, fail.Because(fail.Failed, err, "cannot read "+c.name, "")
	}
	if !c.begun {
		c.begun, record[0] = true, strings.TrimPrefix(record[0], "\ufeff")
	}
	return record, c.check(record)
}

// check refuses what no published table holds.
func (c *csvFile) check(record []string) error {
	for i, text := range record {
		switch {
		case len(text) > LongestField:
			return c.wrong(i, fmt.Sprintf("this %s is longer than %d bytes", c.piece, LongestField))
		case strings.IndexByte(text, 0) >= 0:
			return c.wrong(i, "a zero byte stands in this "+c.piece)
		case !utf8.ValidString(text):
			return c.wrong(i, "this "+c.piece+" is not UTF-8")
		}
	}
	return nil
}

// wrong makes the error of a cell of the row read last; field counts from 0.
func (c *csvFile) wrong(field int, what string) error {
	line, col := c.csv.FieldPos(field)
	return fail.At(fail.Wrong, fail.Place{File: c.name, Line: line, Col: col}, what, c.again)
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
