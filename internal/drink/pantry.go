package drink

import (
	"errors"
	"path"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// readPantry reads a file that use: names into the drink. A file that is none of sipsum's is refused
// in one sentence that shows nothing of it: whoever wrote the drink may not be who may read the file,
// and whoever reads the error neither.
func (r *reader) readPantry(d *Drink, name string, text []byte) {
	own := &fail.List{}
	pantry := &reader{values: values{file{path: beside(r.path, name), faults: own}}, count: r.count, seen: r.seen}
	root := pantry.document(text)
	at, is := holdsOnly(&pantry.file, root, pantryKeys.names(), r.top)
	switch {
	case !is:
		r.faults.Add(at, "a file under use: holds foods: and components:, and nothing else", "this is not a file of foods and components")
		r.torn = true
		return
	case root != nil:
		pantryKeys.read(pantry, d, root)
	}
	r.faults.Take(own)
	r.torn = r.torn || pantry.torn
}

// unread reports a pantry that cannot be read.
func (r *reader) unread(at fail.Place, name string, err error) {
	var known *fail.Error
	if errors.As(err, &known) {
		r.faults.Join(at, known)
		return
	}
	r.faults.Add(at, "give the path as seen from the drink file", "cannot read %s: %s", quoted(name), err)
}

// holdsOnly tells whether a file holds what files of its kind do, under their keys, perhaps misspelt, or
// else what drink files do, which is told key by key; at is where it holds something else. One that cannot
// be read as YAML is one if a line begins so.
func holdsOnly(f *file, root ast.Node, keys, top []string) (at fail.Place, is bool) {
	m, isMap := root.(*ast.MappingNode)
	switch {
	case root == nil:
		begins := func(row string) bool {
			key, _, found := strings.Cut(row, ":")
			return found && slices.Contains(keys, strings.TrimRight(key, " "))
		}
		return f.at(1, 1), slices.ContainsFunc(f.rows, begins)
	case !isMap || len(m.Values) == 0:
		return f.nodeAt(root), false
	}
	for _, v := range m.Values {
		key, ok := raw(v.Key)
		key = unit.PlainSpaces(strings.TrimSpace(key))
		if !ok || near(key, keys) == "" && !slices.Contains(top, key) {
			return f.tokenAt(v.Key.GetToken()), false
		}
	}
	return fail.Place{}, true
}

// beside gives the name of a pantry as seen from where the drink's name is seen.
func beside(drink, file string) string {
	if path.IsAbs(file) || !strings.Contains(drink, "/") {
		return file
	}
	return path.Join(path.Dir(drink), file)
}
