package benchlog

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"sipsum/internal/clean"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// File is the log beside the drinks.
const File = "log.csv"

// Moment is how a line says when, for time.Format.
const Moment = "2006-01-02 15:04"

// columns of a log, in order.
var columns = []string{"when", "who", "drink", "pot", "quantity", "value", "unit", "meter", "lot"}

// Line is one reading.
type Line struct {
	When     string // ISO 8601: 2027-03-31, or with the time, 2027-03-31 14:05
	Who      string
	Drink    string // its name
	Pot      string // a component; empty: the drink
	Quantity string // a key of measured
	Value    string // as an instrument shows it, ± too
	Unit     string // empty: that of the quantity has none
	Meter    string // of the shelf; empty: nobody says
	Lot      string // empty: a lot of its day

	Place  fail.Place
	places []fail.Place // by cell
}

// cells are those of a line, in the order of the columns.
func (l *Line) cells() []*string {
	return []*string{&l.When, &l.Who, &l.Drink, &l.Pot, &l.Quantity, &l.Value, &l.Unit, &l.Meter, &l.Lot}
}

// At gives the place of a cell.
func (l Line) At(column string) fail.Place {
	if i := slices.Index(columns, column); i >= 0 && i < len(l.places) {
		return l.places[i]
	}
	return l.Place
}

// Day counts the day of a line (unit.Day).
func (l Line) Day() int {
	date, _, _ := strings.Cut(l.When, " ")
	day, _ := unit.Day(date)
	return day
}

// Batch names the lot of a line, else its day.
func (l Line) Batch() string {
	if l.Lot != "" {
		return l.Lot
	}
	date, _, _ := strings.Cut(l.When, " ")
	return date
}

// Written is what a value is under measured: the number and its unit.
func (l Line) Written() string { return strings.TrimSpace(l.Value + " " + l.Unit) }

// Header is the first line of a log.
func Header() []byte { return row(columns) }

// Text is a line as it is added to a log.
func (l Line) Text() []byte {
	var cells []string
	for _, c := range l.cells() {
		cells = append(cells, clean.Cell(strings.TrimSpace(*c)))
	}
	return row(cells)
}

func row(cells []string) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	_ = w.Write(cells) // into memory
	w.Flush()
	return out.Bytes()
}

// Parse reads a log. All that is wrong with it is told at once, and what can be read is given.
func Parse(name string, text []byte) ([]Line, *fail.List) {
	faults := &fail.List{}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	r := csv.NewReader(bytes.NewReader(text))
	r.FieldsPerRecord = -1
	rows := bytes.Split(text, []byte("\n"))
	place := func(line, col int) fail.Place { // of characters, as a person counts
		if line <= len(rows) && col-1 <= len(rows[line-1]) {
			col = utf8.RuneCount(rows[line-1][:col-1]) + 1
		}
		return fail.Place{File: name, Line: line, Col: col}
	}
	var list []Line
	for {
		cells, err := r.Read()
		var wrong *csv.ParseError
		switch {
		case errors.Is(err, io.EOF):
			return list, faults
		case errors.As(err, &wrong):
			faults.Add(place(wrong.StartLine, max(wrong.Column, 1)), "put quotes round the whole cell, and write a quote in it twice", "this line of the log cannot be read as CSV")
			continue
		case err != nil:
			faults.Add(fail.Place{File: name, Line: 1, Col: 1}, "see whether it is a text file", "the log cannot be read: %s", err)
			return list, faults
		}
		l, ok := lineOf(cells, func(i int) fail.Place { return place(r.FieldPos(i)) }, faults)
		if ok {
			list = append(list, l)
		}
	}
}

// lineOf reads a line, whose cells stand at their places; not one that names the columns, nor one that is at fault.
func lineOf(cells []string, at func(i int) fail.Place, faults *fail.List) (Line, bool) {
	if slices.Equal(cells, columns) {
		return Line{}, false
	}
	if len(cells) != len(columns) {
		faults.Add(at(0), "it has: "+strings.Join(columns, ","), "this line of the log has %d cells, and not %d", len(cells), len(columns))
		return Line{}, false
	}
	l := Line{Place: at(0)}
	for i, cell := range l.cells() {
		*cell = read(cells[i])
		l.places = append(l.places, at(i))
	}
	if date, clock, timed := strings.Cut(l.When, " "); l.Day() == 0 || timed && !isClock(clock) || date == "" {
		faults.Add(at(0), "write year, month and day, and if you like the time: 2027-03-31 14:05", "%q is no date", clean.Name(l.When))
		return Line{}, false
	}
	for _, must := range []string{"drink", "quantity", "value"} {
		if i := slices.Index(columns, must); *l.cells()[i] == "" {
			faults.Add(at(i), "write it, or take the line out", "this line of the log has no %s", must)
			return Line{}, false
		}
	}
	return l, true
}

// read gives a cell as it was before it was made harmless.
func read(cell string) string {
	cell = strings.TrimSpace(cell)
	if rest, quoted := strings.CutPrefix(cell, "'"); quoted && clean.Cell(rest) == cell {
		return rest
	}
	return cell
}

// isClock tells a time of the day: 14:05.
func isClock(text string) bool {
	hour, minute, ok := strings.Cut(text, ":")
	return ok && isUpTo(hour, "23") && isUpTo(minute, "59")
}

// isUpTo tells two digits that are at most some others.
func isUpTo(text, most string) bool {
	return len(text) == 2 && strings.Trim(text, "0123456789") == "" && text <= most
}
