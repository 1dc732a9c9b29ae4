package cli

import (
	"errors"
	"io/fs"
	"iter"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"sipsum/internal/fail"
)

// someDrinks wants drinks, or folders of them.
func someDrinks(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		return nil
	}
	return exactly(1, "drinks or folders of drink files")(cmd, args)
}

// walked is a drink that arguments name, as a path from where the command stands; or what cannot be walked, and why.
type walked struct {
	file string
	err  error
}

// walk gives the drinks that arguments name, one after the other as they are asked for: in the place of a folder the
// drink files in it and in the folders in it, by name. What is hidden (its name begins with a dot) is passed over, and a
// link is followed, but not back to a folder that it lies in. Two paths of one file are two drinks.
func walk(args []string) iter.Seq[walked] {
	return func(yield func(walked) bool) {
		for _, arg := range args {
			info, err := os.Stat(arg)
			if err != nil || !info.IsDir() {
				if !yield(walked{file: arg}) {
					return
				}
				continue
			}
			w := walker{yield: yield}
			if !w.folder(arg, info) {
				return
			}
			if !w.found && !yield(walked{arg, fail.New(fail.Wrong, "the folder "+arg+" holds no drink files", "name drink files, or end their names with "+drinkEnding)}) {
				return
			}
		}
	}
}

// walker goes through the folder of one argument.
type walker struct {
	yield func(walked) bool
	found bool // something was told of it: a drink, or a fault
	chain []fs.FileInfo
}

func (w *walker) tell(what walked) bool {
	w.found = true
	return w.yield(what)
}

// folder goes through a folder, and reports whether to go on.
func (w *walker) folder(path string, info fs.FileInfo) bool {
	if slices.ContainsFunc(w.chain, func(outer fs.FileInfo) bool { return os.SameFile(outer, info) }) {
		return w.tell(walked{path, fail.New(fail.Wrong, path+" is a link back to a folder that it lies in", "take the link away: all that it leads to is read already")})
	}
	w.chain = append(w.chain, info)
	defer func() { w.chain = w.chain[:len(w.chain)-1] }()
	entries, err := os.ReadDir(path)
	if err != nil {
		return w.tell(walked{path, fail.Because(fail.Wrong, errors.Unwrap(err), "cannot read the folder "+path, "let yourself read it")})
	}
	for _, e := range entries { // by name
		if strings.HasPrefix(e.Name(), ".") {
			continue
		}
		below := filepath.Join(path, e.Name())
		on := true
		switch info, err := os.Stat(below); {
		case err == nil && info.IsDir():
			on = w.folder(below, info)
		case strings.HasSuffix(e.Name(), drinkEnding): // what cannot be read is told when it is opened
			on = w.tell(walked{file: below})
		}
		if !on {
			return false
		}
	}
	return true
}
