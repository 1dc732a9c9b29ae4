package amount

import (
	"strconv"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/note"
)

// Rows is the text of a drink file, row by row; comments and layout stay where nothing is changed.
type Rows []string

// RowsOf parts a text.
func RowsOf(text []byte) Rows { return strings.SplitAfter(string(text), "\n") }

// Text joins what was parted.
func (r Rows) Text() []byte { return []byte(strings.Join(r, "")) }

// Swap puts another food in the place of one that a line names. Errors are *fail.Error.
func (r Rows) Swap(d *drink.Drink, line drink.Line, food string) error {
	at := line.FoodAt
	if at.File != d.File || at.Line == 0 || at.Line > len(r) {
		return fail.New(fail.Wrong, note.Quote(line.Path)+" stands in the shelf "+at.File+", which is not written", "write it there by hand: "+food)
	}
	row := []rune(r[at.Line-1])
	from := min(max(at.Col-1, 0), len(row))
	head, tail := string(row[:from]), string(row[from:])
	if !strings.Contains(tail, line.Food) {
		head, tail = "", string(row)
	}
	if !strings.Contains(tail, line.Food) {
		return fail.New(fail.Wrong, note.Quote(line.Food)+" is not found in the row of its line", "write the line in one row")
	}
	r[at.Line-1] = head + strings.Replace(tail, line.Food, food, 1)
	return nil
}

// Cut takes a step or a reading out: its row, what stands deeper below, and its list if nothing is left. Errors are
// *fail.Error.
func (r Rows) Cut(d *drink.Drink, at fail.Place, word string) error {
	i := at.Line - 1
	begins := func(row string) bool {
		return strings.HasPrefix(strings.TrimLeft(strings.TrimSpace(row), "- "), word+":")
	}
	if i > 0 && i < len(r) && !begins(r[i]) {
		i--
	}
	if at.File != d.File || i < 0 || i >= len(r) || !begins(r[i]) {
		return fail.New(fail.Wrong, word+" at line "+strconv.Itoa(at.Line)+" cannot be taken out of the file", "write it in a row of its own")
	}
	deep, end := depth(r[i]), i+1
	for end < len(r) && !isBlank(r[end]) && depth(r[end]) > deep {
		end++
	}
	clear(r[i:end])
	prev, next := i-1, end
	for prev >= 0 && isBlank(r[prev]) {
		prev--
	}
	for next < len(r) && isBlank(r[next]) {
		next++
	}
	if prev < 0 || !strings.HasSuffix(strings.TrimSpace(r[prev]), ":") {
		return nil
	}
	if of := depth(r[prev]); next == len(r) || depth(r[next]) < of || depth(r[next]) == of && !strings.HasPrefix(strings.TrimSpace(r[next]), "- ") {
		r[prev] = "" // a list of which nothing is left
	}
	return nil
}

func isBlank(row string) bool { return strings.TrimSpace(row) == "" }

func depth(row string) int { return len(row) - len(strings.TrimLeft(row, " ")) }
