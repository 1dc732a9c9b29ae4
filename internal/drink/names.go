package drink

import (
	"slices"
	"strings"
	"unicode"

	"github.com/goccy/go-yaml/ast"
)

// reservedNames are the owners of lines outside components; a component of that
// name would make two lines one.
var reservedNames = []string{"build", "finish", garnish}

// garnish is the one list whose lines are not eaten unless they say so.
const garnish = "garnish"

// componentNameFault says what is wrong with a component's name, "" if nothing
// is. A name that begins with a digit would read as an amount, one with a colon
// as a food of a table.
func componentNameFault(name string) (fault, do string) {
	if fault, do := textFault(name, "the component's name", mostName); fault != "" {
		return fault, do
	}
	switch first := []rune(name)[0]; {
	case unicode.IsDigit(first):
		return "the component's name " + quoted(name) + " begins with a digit", "begin it with a letter"
	case strings.Contains(name, ":"):
		return "the component's name " + quoted(name) + " has a colon", "take the colon out: table:code names a food"
	case slices.Contains(reservedNames, name):
		return "the component cannot be called " + quoted(name), "choose a name other than " + alternatives(reservedNames)
	}
	return "", ""
}

// codeFault says what is wrong with the code of an own food, "" if nothing is.
func codeFault(code string) (fault, do string) {
	if fault, do := textFault(code, "the food's code", mostName); fault != "" {
		return fault, do
	}
	if strings.ContainsAny(code, ": ") {
		return "the food's code " + quoted(code) + " has a colon or a space", "write it like house-oat; lines then say own:house-oat"
	}
	return "", ""
}

// tableCode reads a reference to a food of a table.
func (r *values) tableCode(n ast.Node, what string) (string, bool) {
	text, ok := r.text(n, what, mostName)
	if !ok {
		return "", false
	}
	if table, code, found := strings.Cut(text, ":"); !found || table == "" || code == "" {
		r.faults.Add(r.nodeAt(n), "write table:code, such as \"core:lemon-juice\"", "%s is %s, not a food of a table", what, quoted(text))
		return "", false
	}
	return text, true
}

// near gives the word that a writer most likely meant, "" if none is close.
func near(word string, words []string) string {
	best, bestAt := "", 3 // more than two slips is another word
	for _, w := range words {
		if d := distance(strings.ToLower(word), strings.ToLower(w), bestAt); d < bestAt && d < len(w) {
			best, bestAt = w, d
		}
	}
	return best
}

// distance counts the letters to insert, delete or replace between two words;
// it gives most as soon as the count cannot be below it.
func distance(a, b string, most int) int {
	x, y := []rune(a), []rune(b)
	if len(x)-len(y) >= most || len(y)-len(x) >= most {
		return most
	}
	row := make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i, c := range x {
		diagonal := row[0]
		row[0] = i + 1
		for j, d := range y {
			change := diagonal
			if c != d {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return min(row[len(y)], most)
}
