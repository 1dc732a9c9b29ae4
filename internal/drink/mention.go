package drink

import (
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// Mention is a food that a line names. A line at fault, and a line of a step at fault, are left out
// of a drink; what they name is told of all the same, so that its faults are not found only when the
// others are mended.
type Mention struct {
	Food string
	At   fail.Place
}

// Reading is what is known of the reading of a drink, besides its faults.
type Reading struct {
	// TooLarge tells that the drink is beyond the limits: its faults say by what, and
	// there is nothing in it to be looked up.
	TooLarge bool

	Mentions []Mention // the foods of all lines that could be told, at fault or not
	spoilt   []string  // the texts of lines at fault
	size     size
}

// mention notes what a line names. Of a line whose amount cannot be read that is what begins
// with a table and a colon.
func (r *reader) mention(n ast.Node, l Line, ok bool) {
	text, _ := raw(n)
	text = unit.PlainSpaces(text)
	if !ok {
		r.seen.spoilt = append(r.seen.spoilt, text+l.Food)
	}
	at := l.FoodAt
	if l.Food == "" {
		if l.Food = codeIn(text); l.Food == "" {
			return
		}
		at = r.inside(n, text, l.Food)
	}
	r.seen.Mentions = append(r.seen.Mentions, Mention{l.Food, at})
}

// codeIn gives the end of a text that is a food of a table; "" if there is none.
func codeIn(text string) string {
	words := strings.Fields(text)
	for i, word := range words {
		if _, ok := food.ParseID(word); ok {
			return strings.Join(words[i:], " ")
		}
	}
	return ""
}

// mayName tells whether a line at fault may be meant to name something.
func (d *Drink) mayName(name string) bool {
	return slices.ContainsFunc(d.spoilt, func(text string) bool { return strings.HasSuffix(text, name) })
}
