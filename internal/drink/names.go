package drink

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/spelling"
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
	case isCoded(name):
		return "the component's name " + quoted(name) + " has a colon", "take the colon out: table:code names a food"
	case slices.Contains(reservedNames, name):
		return "the component cannot be called " + quoted(name), "choose a name other than " + fail.Or(reservedNames)
	}
	return "", ""
}

// twins reports a name that nobody can tell from another by reading it.
func twins(faults *fail.List, what string, e entry, first string, at fail.Place) {
	if spelling.Alike(e.key, first) {
		faults.Add(e.at, "rename one of them, or pour one for both", "case and spaces are all that tells the %s %s from %s, at %s", what, quoted(e.key), quoted(first), at)
	}
}

// codeFault says what is wrong with the code of an own food, "" if nothing is.
func codeFault(code string) (fault, do string) {
	if fault, do := textFault(code, "the food's code", mostName); fault != "" {
		return fault, do
	}
	if strings.Contains(code, ":") {
		return "the food's code " + quoted(code) + " has a colon", "write it like house-oat; lines then say own:house-oat"
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
	return smallTable(text), true
}

// smallTable writes the table of table:code in small letters, as every table is called.
func smallTable(text string) string {
	if id, coded := food.ParseID(text); coded {
		return id.String()
	}
	return text
}

// isCoded tells table:code from a name with a colon, "syrup (1:1)".
func isCoded(text string) bool {
	_, coded := food.ParseID(text)
	return coded
}

// occurrences counts the lines or steps of one list that have the same name, so
// that each has a path of its own. A path holds no position: a line that is
// added elsewhere in the list changes no other path, and so no other draw.
type occurrences map[string]int

// path gives "owner/name", and "owner/name~2" for the second of that name.
func (o occurrences) path(owner, name string) string {
	o[name]++
	path := owner + "/" + escape(name)
	if o[name] > 1 {
		path += "~" + strconv.Itoa(o[name])
	}
	return path
}

// identity gives what a line pours, as its path has it: the code of a table in whatever letters is
// one code, that of an own food is as its owner writes it.
func identity(poured string) string {
	if id, coded := food.ParseID(poured); coded && id.Table != food.Own {
		return strings.ToLower(id.String())
	}
	return poured
}

// escape keeps the two signs of a path out of names.
func escape(name string) string {
	return strings.NewReplacer("~", "~t", "/", "~s").Replace(name)
}

// Owner gives the component in whose lists a path is; "build", "finish" and "garnish" are
// the drink's own.
func Owner(path string) string {
	owner, _, _ := strings.Cut(path, "/")
	return strings.NewReplacer("~s", "/", "~t", "~").Replace(owner)
}
