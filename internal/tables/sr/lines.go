package sr

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"strconv"

	"golang.org/x/text/encoding/charmap"

	"sipsum/internal/fail"
)

const again = "take the file from the publisher's archive again"

// lines reads one file line by line. The fields of a line are valid until the
// next call of next.
type lines struct {
	file    fs.File
	in      *bufio.Reader
	name    string // for messages
	line    int
	current []byte
	starts  []int // where each field begins in it with its sign, from 0
	fields  []span
	want    int // fields in a line
}

// span is a piece of a line.
type span struct{ from, to int }

// field gives a field as it is in the file.
func (l *lines) field(i int) []byte { return l.current[l.fields[i].from:l.fields[i].to] }

// longest is more than twice the longest line that the published widths allow.
const longest = 4096

func openLines(files folder, name string, want int) (*lines, error) {
	file, err := files.fsys.Open(name)
	if err != nil {
		return nil, fail.Because(fail.Failed, err, "cannot read "+name, "")
	}
	return &lines{file: file, in: bufio.NewReaderSize(file, longest), name: path.Join(files.dir, name), want: want}, nil
}

func (l *lines) close() { l.file.Close() }

// next reads a line; it gives io.EOF after the last.
func (l *lines) next() error {
	text, err := l.in.ReadSlice('\n')
	l.line++
	switch {
	case err == io.EOF && len(text) == 0:
		return io.EOF
	case err == io.EOF:
		return l.wrong(len(text), "the file ends in the middle of this line", again)
	case errors.Is(err, bufio.ErrBufferFull):
		return l.wrong(0, fmt.Sprintf("the line is longer than %d bytes", longest), again)
	case err != nil:
		return fail.Because(fail.Failed, err, "cannot read "+l.name, "")
	}
	text = bytes.TrimSuffix(text[:len(text)-1], []byte{'\r'})
	if at := bytes.IndexByte(text, 0); at >= 0 {
		return l.wrong(at, "a zero byte stands in this line", again)
	}
	return l.split(text)
}

// split cuts a line at "^"; a text between "~" may hold one.
func (l *lines) split(text []byte) error {
	l.current, l.fields, l.starts = text, l.fields[:0], l.starts[:0]
	for at := 0; ; at++ { // the "^"
		l.starts = append(l.starts, at)
		if at < len(text) && text[at] == '~' {
			end := at + 1
			for end < len(text) && (text[end] != '~' || (end+1 < len(text) && text[end+1] != '^')) {
				end++
			}
			if end == len(text) {
				return l.wrong(at, "a text that begins with ~ has no end", again)
			}
			l.fields = append(l.fields, span{at + 1, end})
			at = end + 1
		} else {
			end := at
			for end < len(text) && text[end] != '^' {
				end++
			}
			l.fields = append(l.fields, span{at, end})
			at = end
		}
		if at >= len(text) {
			break
		}
	}
	if len(l.fields) != l.want {
		return l.wrong(0, fmt.Sprintf("%d fields where there should be %d", len(l.fields), l.want), again)
	}
	return nil
}

// wrong makes the error of a byte of the current line, counted from 0.
func (l *lines) wrong(at int, what, do string) error {
	return fail.At(fail.Wrong, fail.Place{File: l.name, Line: l.line, Col: at + 1}, what, do)
}

// wrongField makes the error of a field.
func (l *lines) wrongField(i int, what, do string) error { return l.wrong(l.starts[i], what, do) }

// text gives a field, decoded.
func (l *lines) text(i int) string {
	for _, b := range l.field(i) {
		if b >= 0x80 {
			decoded, err := charmap.Windows1252.NewDecoder().Bytes(l.field(i))
			if err != nil { // the decoder maps every byte
				break
			}
			return string(decoded)
		}
	}
	return string(l.field(i))
}

// number reads a field that is a number of digits and a point; blank gives
// stated false.
func (l *lines) number(i int) (value float64, stated bool, err error) {
	field := l.field(i)
	if len(field) == 0 {
		return 0, false, nil
	}
	if field[0] == '-' {
		return 0, false, l.wrongField(i, fmt.Sprintf("%.40q is negative", field), again)
	}
	for _, b := range field {
		if (b < '0' || b > '9') && b != '.' {
			return 0, false, l.wrongField(i, fmt.Sprintf("%.40q is not a number", field), again)
		}
	}
	value, err = strconv.ParseFloat(string(field), 64)
	if err != nil {
		return 0, false, l.wrongField(i, fmt.Sprintf("%.40q is not a number", field), again)
	}
	return value, true, nil
}

// count reads a field that is a whole number; blank gives 0.
func (l *lines) count(i int) (int, error) {
	value, _, err := l.number(i)
	if err == nil && (value != float64(int(value)) || value > 1e9) {
		err = l.wrongField(i, fmt.Sprintf("%.40q is not a whole number", l.field(i)), again)
	}
	return int(value), err
}
