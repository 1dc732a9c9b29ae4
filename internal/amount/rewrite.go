package amount

import (
	"cmp"
	"maps"
	"regexp"
	"slices"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// Rewrite gives the text of a drink file with other amounts in the place of those written, by their
// path. Comments and layout stay. What stands in a shelf is not the drink's to write.
func Rewrite(d *drink.Drink, text []byte, written, other Amounts) ([]byte, error) {
	rows := strings.SplitAfter(string(text), "\n")
	var edits []edit
	for _, path := range slices.Sorted(maps.Keys(other)) {
		at, key := placeOf(d, path)
		switch {
		case at.Line == 0:
			return nil, notFound(path, other[path])
		case at.File != d.File:
			return nil, fail.New(fail.Wrong, note.Quote(path)+" stands in the shelf "+at.File+", which is not written", "write it there by hand: "+other[path].String())
		}
		e, ok := editAt(rows, at, key, written[path], other[path])
		if !ok {
			return nil, notFound(path, other[path])
		}
		edits = append(edits, e)
	}
	slices.SortFunc(edits, func(a, b edit) int { return cmp.Or(cmp.Compare(b.row, a.row), cmp.Compare(b.from, a.from)) })
	for _, e := range edits {
		rows[e.row] = rows[e.row][:e.from] + e.text + rows[e.row][e.to:]
	}
	return []byte(strings.Join(rows, "")), nil
}

func notFound(path string, to unit.Amount) error {
	return fail.New(fail.Wrong, "the amount at "+note.Quote(path)+" is not found in the file's text", "write it by hand: "+to.String())
}

// edit is a piece of a row anew.
type edit struct {
	row, from, to int
	text          string
}

// change makes the edit by which a text that begins at a place of a row becomes another; what both
// end with stays, for another amount may stand in it.
func change(row, from int, was, next string) edit {
	same := 0
	for same < min(len(was), len(next)) && was[len(was)-1-same] == next[len(next)-1-same] {
		same++
	}
	return edit{row, from, from + len(was) - same, next[:len(next)-same]}
}

// placeOf gives where an amount is written: at a place, or under a key that follows it.
func placeOf(d *drink.Drink, path string) (at fail.Place, key string) {
	lines := func(list []drink.Line) bool {
		i := slices.IndexFunc(list, func(l drink.Line) bool { return l.Path == path })
		if i >= 0 {
			at, key = list[i].Place, "amount"
		}
		return i >= 0
	}
	steps := func(list []drink.Step) bool {
		return slices.ContainsFunc(list, func(s drink.Step) bool {
			name, is := strings.CutPrefix(path, s.StepPath()+"/")
			if !is || lines(s.Lines()) || strings.Contains(name, "/") {
				return is
			}
			at, key = s.At(), name
			return true
		})
	}
	found := lines(d.Build) || lines(d.Garnish) || steps(d.Finish)
	for i := 0; i < len(d.Components) && !found; i++ {
		found = lines(d.Components[i].Ingredients) || steps(d.Components[i].Steps)
	}
	return at, key
}

// editAt finds the amount that is written at a place, or is the first of its key from there on.
func editAt(rows []string, at fail.Place, key string, was, to unit.Amount) (edit, bool) {
	named := regexp.MustCompile(`(?i)(?:^|[\s{,"'])` + regexp.QuoteMeta(key) + `["']?\s*:\s*["']?`)
	for row := at.Line - 1; row < len(rows); row++ {
		from := 0
		if row == at.Line-1 {
			from = len(string([]rune(rows[row])[:at.Col-1]))
			start := from + len(rows[row][from:]) - len(strings.TrimLeft(rows[row][from:], `"'`))
			if text, ok := restated(rows[row][start:], "\r\n", was, to); ok {
				return change(row, start, rows[row][start:], text), true
			}
		}
		for _, m := range named.FindAllStringIndex(rows[row][from:], -1) {
			start := from + m[1]
			if text, ok := restated(rows[row][start:], ",}\"'#\r\n", was, to); ok {
				return change(row, start, rows[row][start:], text), true
			}
		}
	}
	return edit{}, false
}

// restated gives a text that begins with an amount, and then ends or goes on, with another in its place.
func restated(text, ends string, was, to unit.Amount) (string, bool) {
	tail := len(text)
	if i := strings.IndexAny(text, ends); i >= 0 {
		tail = i
	}
	head := strings.TrimRight(text[:tail], " ")
	if a, _, err := unit.ParseAmount(unit.PlainSpaces(head)); err != nil || a != was {
		return "", false
	}
	next, err := unit.Restate(head, to)
	return next + text[len(head):], err == nil
}
