package drink

import (
	"path"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
)

// reader reads what a drink is made of.
type reader struct {
	values
	open     func(path string) ([]byte, error) // nil in a pantry
	count    *int                              // ingredient lines of all files so far
	seen     *Reading                          // of all files
	top      []string                          // the keys of a drink file
	compared []Word                            // of compare-with, which is checked at the end
	tasks    []Task                            // of the steps read so far
	allShown bool                              // a fault of this file has shown all steps
}

// Parse reads a drink file. Name is the file's name for positions; open reads a
// pantry named in use:, by its path relative to the drink, and may be nil where
// no other file can be read.
//
// The drink holds all that was understood; lines, steps and foods at fault are
// left out of it, so that the caller can check the rest and report everything
// together. If the list is empty the drink is whole: its values are within the
// limits, its names are unique, and no component is made of itself.
func Parse(name string, text []byte, open func(path string) ([]byte, error)) (*Drink, *fail.List) {
	return ParseBeside(name, text, open, nil)
}

// ParseBeside reads a drink file with what lies beside it unasked: the shelf of meters, and the bench log,
// whose latest line of a reading counts in the place of what the file says. beside reads a file of
// the drink's folder, with an error that is fs.ErrNotExist where there is none; nil: nothing lies there.
func ParseBeside(name string, text []byte, open, beside func(path string) ([]byte, error)) (*Drink, *fail.List) {
	d := &Drink{File: name}
	faults := &fail.List{}
	r := &reader{values: values{file{path: name, faults: faults}}, open: open, count: new(int), seen: &d.Reading, top: drinkKeys.names()}
	if open == nil {
		r.open = nothingElse
	}
	root := r.document(text)
	if root == nil {
		return d, faults
	}
	drinkKeys.read(r, d, root)
	if beside != nil {
		metersBeside(r, d, beside)
		logBeside(r, d, beside)
	}
	w := whole{drink: d, file: &r.file, compared: r.compared}
	w.check()
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
		r.faults.Add(r.nodeAt(entries[mostPantries]), "put them together", "more than %d shelves", mostPantries)
		entries = entries[:mostPantries]
	}
	seen := map[string]bool{}
	total := 0
	for _, e := range entries {
		name, ok := r.text(e, "a shelf", mostName)
		if !ok {
			continue
		}
		if seen[path.Clean(name)] {
			r.faults.Add(r.nodeAt(e), "take one of them out", "%s is used twice", quoted(name))
			continue
		}
		seen[path.Clean(name)] = true
		text, err := r.open(name)
		if err != nil {
			r.unread(r.nodeAt(e), name, err)
			r.torn = true
			continue
		}
		if total += len(text); total > mostBytes {
			r.faults.Add(r.nodeAt(e), "use fewer, or take out what no drink needs", "the shelves have more than %d bytes together", mostBytes)
			r.torn = true
			return
		}
		r.readPantry(d, name, text)
	}
}
