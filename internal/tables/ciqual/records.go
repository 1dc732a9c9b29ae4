package ciqual

import (
	"bufio"
	"fmt"
	"html"
	"io"
	"io/fs"
	"path"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

// records reads <TABLE> with one element a record and one element a field, as
// the publisher writes it: a "<" that no tag begins with is text, and so is "&".
// A parser of XML proper would refuse both.
type records struct {
	file     fs.File
	in       *bufio.Reader
	name     string
	element  string // of a record, in lower case
	at       fail.Place
	fields   map[string]string // by name in lower case, blanks folded
	places   map[string]fail.Place
	begun    bool
	finished bool
}

// longestTag is many times the longest tag of the files, in bytes.
const longestTag = 256

func openRecords(files fs.FS, dir, name, element string) (*records, error) {
	file, err := files.Open(name)
	if err != nil {
		return nil, fail.Because(fail.Wrong, err, "cannot read "+path.Join(dir, name), again)
	}
	full := path.Join(dir, name)
	return &records{
		file: file, in: bufio.NewReader(file), name: full, element: element, at: fail.Place{File: full, Line: 1, Col: 1},
		fields: map[string]string{}, places: map[string]fail.Place{},
	}, nil
}

func (r *records) close() { r.file.Close() }

// text gives a field of the current record; empty if it has none.
func (r *records) text(field string) string { return r.fields[field] }

// wrong makes the error of a field of the current record.
func (r *records) wrong(field, what string) error {
	at, ok := r.places[field]
	if !ok {
		at = r.places[""]
	}
	return fail.At(fail.Wrong, at, what, again)
}

// next reads a record; io.EOF after the last.
func (r *records) next() error {
	clear(r.fields)
	clear(r.places)
	if !r.begun {
		if err := r.begin(); err != nil {
			return err
		}
	}
	tag, err := r.betweenTags()
	switch {
	case err != nil:
		return err
	case tag.closing && tag.name == "table":
		return r.end()
	case tag.closing || tag.name != r.element || tag.empty:
		return fail.At(fail.Wrong, tag.at, fmt.Sprintf("<%.40s> where <%s> should be", tag.name, r.element), again)
	}
	r.places[""] = tag.at
	for {
		field, err := r.betweenTags()
		switch {
		case err != nil:
			return err
		case field.closing && field.name == r.element:
			return nil
		case field.closing || field.name == r.element:
			return fail.At(fail.Wrong, field.at, fmt.Sprintf("<%.40s> where a field or the end of the record should be", field.name), again)
		}
		if _, twice := r.fields[field.name]; twice {
			return fail.At(fail.Wrong, field.at, fmt.Sprintf("field %.40s stands twice", field.name), again)
		}
		if r.fields[field.name], err = r.content(field); err != nil {
			return err
		}
		r.places[field.name] = field.at
	}
}

func (r *records) begin() error {
	r.begun = true
	if mark, err := r.in.Peek(3); err == nil && string(mark) == "\ufeff" {
		r.in.Discard(3)
	}
	tag, err := r.betweenTags()
	if err == nil && (tag.name != "table" || tag.closing || tag.empty) {
		err = fail.At(fail.Wrong, tag.at, fmt.Sprintf("<%.40s> where <TABLE> should be", tag.name), again)
	}
	return err
}

// end makes sure that nothing follows the table.
func (r *records) end() error {
	if r.finished {
		return io.EOF
	}
	text, _, err := r.untilTag()
	if err != io.EOF {
		return fail.At(fail.Wrong, r.at, "something stands behind the table", again)
	}
	if strings.TrimSpace(text) != "" {
		return fail.At(fail.Wrong, r.at, "text stands behind the table", again)
	}
	r.finished = true
	return io.EOF
}

// tag is <name>, </name> or <name/>; the name is in lower case.
type tag struct {
	name           string
	closing, empty bool
	at             fail.Place
}

// betweenTags reads blanks and the tag behind them.
func (r *records) betweenTags() (tag, error) {
	text, t, err := r.untilTag()
	switch {
	case err == io.EOF:
		return t, fail.At(fail.Wrong, r.at, "the file ends before the table does: it may be cut off", again)
	case err == nil && strings.TrimSpace(text) != "":
		return t, fail.At(fail.Wrong, t.at, fmt.Sprintf("%.40q stands where no text should be", strings.TrimSpace(text)), again)
	}
	return t, err
}

// content reads the text of a field up to its closing tag.
func (r *records) content(field tag) (string, error) {
	if field.empty {
		return "", nil
	}
	text, end, err := r.untilTag()
	switch {
	case err == io.EOF:
		return "", fail.At(fail.Wrong, r.at, "the file ends in a field: it may be cut off", again)
	case err != nil:
		return "", err
	case !end.closing || end.name != field.name:
		return "", fail.At(fail.Wrong, end.at, fmt.Sprintf("<%.40s> where </%s> should be", end.name, field.name), again)
	}
	text = fold(html.UnescapeString(text))
	if what := notText(text); what != "" {
		return "", fail.At(fail.Wrong, field.at, what, again)
	}
	return text, nil
}

// untilTag reads a text and the tag behind it.
func (r *records) untilTag() (string, tag, error) {
	var text strings.Builder
	for {
		b, err := r.byte()
		if err != nil {
			return text.String(), tag{}, err
		}
		if b == '<' && r.tagFollows() {
			t, err := r.tag()
			if err == nil && t.name == "" {
				continue // the declaration of the file
			}
			return text.String(), t, err
		}
		if text.WriteByte(b); text.Len() > table.LongestField {
			return "", tag{}, fail.At(fail.Wrong, r.at, fmt.Sprintf("a text is longer than %d bytes", table.LongestField), again)
		}
	}
}

// tagFollows reports whether a letter, "/" or "?" follows the "<".
func (r *records) tagFollows() bool {
	next, err := r.in.Peek(1)
	return err == nil && (next[0] == '/' || next[0] == '?' || 'a' <= next[0]|0x20 && next[0]|0x20 <= 'z')
}

// tag reads a tag behind its "<"; attributes say nothing here. The name of a
// declaration is empty.
func (r *records) tag() (tag, error) {
	t := tag{at: r.at}
	t.at.Col-- // the "<"
	var inside strings.Builder
	for {
		b, err := r.byte()
		switch {
		case err == io.EOF || err == nil && inside.Len() >= longestTag:
			return t, fail.At(fail.Wrong, t.at, "a tag has no end", again)
		case err != nil:
			return t, err
		case b == '>':
			text := inside.String()
			if strings.HasPrefix(text, "?") {
				return t, nil
			}
			text, t.closing = strings.CutPrefix(text, "/")
			text, t.empty = strings.CutSuffix(text, "/")
			t.name, _, _ = strings.Cut(strings.ToLower(strings.TrimSpace(text)), " ")
			if t.name == "" || t.closing && t.empty {
				return t, fail.At(fail.Wrong, t.at, "a tag without a name", again)
			}
			return t, nil
		}
		inside.WriteByte(b)
	}
}

// byte reads a byte and moves the place behind it.
func (r *records) byte() (byte, error) {
	b, err := r.in.ReadByte()
	switch {
	case err == io.EOF:
		return 0, io.EOF
	case err != nil:
		return 0, fail.Because(fail.Failed, err, "cannot read "+r.name, "")
	case b == '\n':
		r.at.Line, r.at.Col = r.at.Line+1, 1
	default:
		r.at.Col++
	}
	return b, nil
}
