package amount

import (
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/note"
)

// Refood gives the text of a drink file with other foods, and other amounts of them, in the place of
// those that lines name, by path. Comments and layout stay.
func Refood(d *drink.Drink, text []byte, foods map[string]string, written, other Amounts) ([]byte, error) {
	text, err := Rewrite(d, text, written, other)
	if err != nil {
		return nil, err
	}
	rows := strings.SplitAfter(string(text), "\n")
	var lines []drink.Line
	for i := range d.Components {
		lines = append(lines, d.Components[i].Ingredients...)
		for _, s := range d.Components[i].Steps {
			lines = append(lines, s.Lines()...)
		}
	}
	lines = append(lines, d.Build...)
	for _, s := range d.Finish {
		lines = append(lines, s.Lines()...)
	}
	for _, line := range lines {
		to, ok := foods[line.Path]
		if !ok {
			continue
		}
		if err := refood(rows, d, line, to); err != nil {
			return nil, err
		}
	}
	return []byte(strings.Join(rows, "")), nil
}

// refood names another food in the row of a line.
func refood(rows []string, d *drink.Drink, line drink.Line, to string) error {
	at := line.FoodAt
	switch {
	case at.File != d.File || at.Line == 0 || at.Line > len(rows):
		return fail.New(fail.Wrong, note.Quote(line.Path)+" stands in the shelf "+at.File+", which is not written", "write it there by hand: "+to)
	case line.Fill != "" || line.As == "whole" || line.Portion != "":
		return fail.New(fail.Wrong, note.Quote(line.Path)+" says more of its food than its name, which is not of the other", "write the line by hand: "+to)
	}
	row := rows[at.Line-1]
	from := len(string([]rune(row)[:min(max(line.Place.Col-1, 0), len([]rune(row)))]))
	if line.Place.Line != at.Line {
		from = 0
	}
	head, tail := row[:from], row[from:]
	if !strings.Contains(tail, line.Food) {
		return fail.New(fail.Wrong, note.Quote(line.Food)+" is not found in the row of its line", "write the line in one row")
	}
	rows[at.Line-1] = head + strings.Replace(tail, line.Food, to, 1)
	return nil
}

// Unread gives the text of a drink file without what was read of some components.
func Unread(d *drink.Drink, text []byte, components []string) ([]byte, error) {
	rows := strings.SplitAfter(string(text), "\n")
	cut := func(s drink.Step) error {
		if _, is := s.(*drink.Measured); !is {
			return nil
		}
		return cutRow(rows, d, s.At(), s.Kind())
	}
	for i := range d.Components {
		c := &d.Components[i]
		if !slices.Contains(components, c.Name) {
			continue
		}
		for _, s := range c.Steps {
			if err := cut(s); err != nil {
				return nil, err
			}
		}
		if c.Measured != nil {
			if err := cut(c.Measured); err != nil {
				return nil, err
			}
		}
	}
	for _, s := range d.Finish {
		if err := cut(s); err != nil {
			return nil, err
		}
	}
	return []byte(strings.Join(rows, "")), nil
}

// cutRow takes a key out with what stands deeper below it.
func cutRow(rows []string, d *drink.Drink, at fail.Place, word string) error {
	i := at.Line - 1
	begins := func(row string) bool {
		return strings.HasPrefix(strings.TrimLeft(strings.TrimSpace(row), "- "), word+":")
	}
	if i > 0 && i < len(rows) && !begins(rows[i]) {
		i--
	}
	if at.File != d.File || i < 0 || i >= len(rows) || !begins(rows[i]) {
		return fail.New(fail.Wrong, word+" at line "+strconv.Itoa(at.Line)+" cannot be taken out of the file", "write it in a row of its own")
	}
	deep, end := depth(rows[i]), i+1
	for end < len(rows) && !isBlank(rows[end]) && depth(rows[end]) > deep {
		end++
	}
	clear(rows[i:end])
	prev, next := i-1, end
	for prev >= 0 && isBlank(rows[prev]) {
		prev--
	}
	for next < len(rows) && isBlank(rows[next]) {
		next++
	}
	if prev < 0 || !strings.HasSuffix(strings.TrimSpace(rows[prev]), ":") {
		return nil
	}
	if of := depth(rows[prev]); next == len(rows) || depth(rows[next]) < of || depth(rows[next]) == of && !strings.HasPrefix(strings.TrimSpace(rows[next]), "- ") {
		rows[prev] = "" // a list of which nothing is left
	}
	return nil
}

func isBlank(row string) bool { return strings.TrimSpace(row) == "" }

func depth(row string) int { return len(row) - len(strings.TrimLeft(row, " ")) }
