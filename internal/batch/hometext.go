package batch

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/note"
)

// rows is the text of a drink file, row by row; comments and layout stay where nothing is changed.
type rows []string

func rowsOf(text []byte) rows { return strings.SplitAfter(string(text), "\n") }

func (r rows) text() []byte { return []byte(strings.Join(r, "")) }

// swap puts another food in the place of one that a line names.
func (r rows) swap(d *drink.Drink, line drink.Line, food string) error {
	at := line.FoodAt
	if at.File != d.File || at.Line == 0 || at.Line > len(r) {
		return fail.New(fail.Wrong, note.Quote(line.Path)+" stands in a shelf, which is not written", "write it there by hand: "+food)
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

// cut takes a step or a reading out: its row, what stands deeper below, and its list if nothing is left.
func (r rows) cut(d *drink.Drink, at fail.Place, word string) error {
	i := at.Line - 1
	begins := func(row string) bool {
		head := strings.TrimLeft(strings.TrimSpace(row), "- ")
		return strings.HasPrefix(head, word+":")
	}
	for back := 0; i > 0 && back < 1 && i < len(r) && !begins(r[i]); back++ {
		i--
	}
	if at.File != d.File || i < 0 || i >= len(r) || !begins(r[i]) {
		return fail.New(fail.Wrong, word+" at line "+strconv.Itoa(at.Line)+" cannot be taken out of the file", "write it in a row of its own")
	}
	deep := indent(r[i])
	blank := func(j int) bool { return strings.TrimSpace(r[j]) == "" }
	end := i + 1
	for end < len(r) && !blank(end) && indent(r[end]) > deep {
		end++
	}
	for j := i; j < end; j++ {
		r[j] = ""
	}
	prev, next := i-1, end
	for prev >= 0 && blank(prev) {
		prev--
	}
	for next < len(r) && blank(next) {
		next++
	}
	opens := prev >= 0 && strings.HasSuffix(strings.TrimSpace(r[prev]), ":")
	inside := next < len(r) && (indent(r[next]) > indent(r[prev]) || indent(r[next]) == indent(r[prev]) && strings.HasPrefix(strings.TrimSpace(r[next]), "- "))
	if opens && !inside {
		r[prev] = ""
	}
	return nil
}

func indent(row string) int { return len(row) - len(strings.TrimLeft(row, " ")) }

var (
	servesRow = regexp.MustCompile(`(?m)^serves:[ \t]*[0-9]+`)
	nameRow   = regexp.MustCompile(`(?m)^components:[ \t]*(#.*)?\n`)
	countHead = regexp.MustCompile(`^["']?[0-9½⅓⅔¼¾⅛./ ]+`)
)

// serve writes for how many the file is.
func serve(text []byte, serves int) []byte {
	return servesRow.ReplaceAll(text, []byte("serves: "+strconv.Itoa(serves)))
}

// pot writes another component, before all others.
func withPot(text []byte, name string, ingredients []string) []byte {
	pot := "  " + strconv.Quote(name) + ":\n    ingredients: [" + strings.Join(ingredients, ", ") + "]\n"
	if at := nameRow.FindIndex(text); at != nil {
		return slices.Concat(text[:at[1]], []byte(pot), text[at[1]:])
	}
	return slices.Concat([]byte(strings.TrimRight(string(text), "\n")+"\n"), []byte("components:\n"+pot))
}

// count writes another number before what is counted.
func (r rows) count(d *drink.Drink, line drink.Line, count float64) error {
	at := line.Place
	if at.File == d.File && at.Line > 0 && at.Line <= len(r) {
		row := []rune(r[at.Line-1])
		head, tail := string(row[:at.Col-1]), string(row[at.Col-1:])
		if m := countHead.FindString(tail); m != "" {
			quote := ""
			if strings.ContainsAny(m[:1], `"'`) {
				quote = m[:1]
			}
			r[at.Line-1] = head + quote + strconv.FormatFloat(count, 'f', -1, 64) + " " + strings.TrimPrefix(tail, m)
			return nil
		}
	}
	return fail.New(fail.Wrong, note.Quote(line.Path)+" is counted, and its number is not found", "ask for the serves that the file is for, or write: 2 pieces FOOD")
}

// drop takes a line out of its list, and tells whether it found it in a row that it can take it from.
func (r rows) drop(d *drink.Drink, line drink.Line) bool {
	at := line.Place
	if at.File != d.File || at.Line == 0 || at.Line > len(r) {
		return false
	}
	row := []rune(r[at.Line-1])
	from := min(max(at.Col-1, 0), len(row))
	head, tail := string(row[:from]), string(row[from:])
	end := strings.Index(tail, line.Food)
	if strings.HasPrefix(tail, "{") || end < 0 {
		return false
	}
	rest := strings.TrimLeft(tail[end+len(line.Food):], `"'`)
	switch {
	case strings.TrimSpace(head) == "-":
		r[at.Line-1] = ""
	case strings.HasPrefix(rest, ","):
		r[at.Line-1] = head + strings.TrimLeft(rest[1:], " ")
	case strings.HasSuffix(strings.TrimRight(head, ` "'`), ","):
		head = strings.TrimRight(head, ` "'`)
		r[at.Line-1] = head[:len(head)-1] + rest
	default:
		return false
	}
	return true
}
