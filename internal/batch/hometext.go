package batch

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/note"
)

// rows is the text of a home version.
type rows struct{ amount.Rows }

func rowsOf(text []byte) rows { return rows{amount.RowsOf(text)} }

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
	if at.File == d.File && at.Line > 0 && at.Line <= len(r.Rows) {
		row := []rune(r.Rows[at.Line-1])
		head, tail := string(row[:at.Col-1]), string(row[at.Col-1:])
		if m := countHead.FindString(tail); m != "" {
			quote := ""
			if strings.ContainsAny(m[:1], `"'`) {
				quote = m[:1]
			}
			r.Rows[at.Line-1] = head + quote + strconv.FormatFloat(count, 'f', -1, 64) + " " + strings.TrimPrefix(tail, m)
			return nil
		}
	}
	return fail.New(fail.Wrong, note.Quote(line.Path)+" is counted, and its number is not found", "ask for the serves that the file is for, or write: 2 pieces FOOD")
}

// drop takes a line out of its list, and tells whether it found it in a row that it can take it from.
func (r rows) drop(d *drink.Drink, line drink.Line) bool {
	at := line.Place
	if at.File != d.File || at.Line == 0 || at.Line > len(r.Rows) {
		return false
	}
	row := []rune(r.Rows[at.Line-1])
	from := min(max(at.Col-1, 0), len(row))
	head, tail := string(row[:from]), string(row[from:])
	end := strings.Index(tail, line.Food)
	if strings.HasPrefix(tail, "{") || end < 0 {
		return false
	}
	rest := strings.TrimLeft(tail[end+len(line.Food):], `"'`)
	switch {
	case strings.TrimSpace(head) == "-":
		r.Rows[at.Line-1] = ""
	case strings.HasPrefix(rest, ","):
		r.Rows[at.Line-1] = head + strings.TrimLeft(rest[1:], " ")
	case strings.HasSuffix(strings.TrimRight(head, ` "'`), ","):
		head = strings.TrimRight(head, ` "'`)
		r.Rows[at.Line-1] = head[:len(head)-1] + rest
	default:
		return false
	}
	return true
}
