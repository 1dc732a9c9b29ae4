package drink

import (
	"path"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
)

// Parse reads a drink file. Name is the file's name for positions; open reads a
// pantry named in use:, by its path relative to the drink, and may be nil where
// no other file can be read.
//
// The drink holds all that was understood; lines, steps and foods at fault are
// left out of it, so that the caller can check the rest and report everything
// together. If the list is empty the drink is whole: its values are within the
// limits, its names are unique, and no component is made of itself.
func Parse(name string, text []byte, open func(path string) ([]byte, error)) (*Drink, *fail.List) {
	d := &Drink{File: name}
	faults := &fail.List{}
	r := &reader{file: name, faults: faults, open: open, count: new(int)}
	if open == nil {
		r.open = nothingElse
	}
	root := r.document(text)
	if root == nil {
		return d, faults
	}
	drinkKeys.read(r, d, root)
	r.checkWhole(d)
	return d, faults
}

func nothingElse(string) ([]byte, error) {
	return nil, fail.New(fail.Wrong, "no other file can be read from here", "put the foods and components into the drink file")
}

// usePantries reads the files of use: into the drink.
func (r *reader) usePantries(d *Drink, n ast.Node) {
	entries, ok := r.list(n, "use")
	if !ok {
		return
	}
	if len(entries) > mostPantries {
		r.faults.Add(r.nodeAt(entries[mostPantries]), "put them together", "more than %d pantry files", mostPantries)
		entries = entries[:mostPantries]
	}
	seen := map[string]bool{}
	total := 0
	for _, e := range entries {
		file, ok := r.text(e, "a pantry file", mostName)
		if !ok {
			continue
		}
		if seen[path.Clean(file)] {
			r.faults.Add(r.nodeAt(e), "take one of them out", "%s is used twice", quoted(file))
			continue
		}
		seen[path.Clean(file)] = true
		text, err := r.open(file)
		if err != nil {
			r.faults.Add(r.nodeAt(e), "give the path as seen from the drink file", "cannot read %s: %s", quoted(file), err)
			r.torn = true
			continue
		}
		if total += len(text); total > mostBytes {
			r.faults.Add(r.nodeAt(e), "use fewer, or take out what no drink needs", "the pantry files have more than %d bytes together", mostBytes)
			r.torn = true
			return
		}
		pantry := &reader{file: beside(r.file, file), faults: r.faults, count: r.count}
		if root := pantry.document(text); root != nil {
			pantryKeys.read(pantry, d, root)
		}
		r.torn = r.torn || pantry.torn
	}
}

// beside gives the name of a pantry as seen from where the drink's name is seen.
func beside(drink, file string) string {
	if path.IsAbs(file) || !strings.Contains(drink, "/") {
		return file
	}
	return path.Join(path.Dir(drink), file)
}
