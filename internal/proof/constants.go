package proof

import (
	"fmt"
	"io/fs"
	"path"
	"strings"
	"sync"

	"sipsum/data"
)

// Constants is a table of the program. Its text is there where it holds constants, rules or words; of the
// core table, whose rows stand in the pack by themselves, and of the maps by which tables are loaded there is the
// digest alone.
type Constants struct {
	File   string `json:"file"`
	Digest string `json:"sha256"`
	Text   string `json:"text,omitempty"`
}

// folder is where the program keeps its tables, as messages name it.
const folder = "data/"

// ProgramConstants lists the tables of this program, by name.
var ProgramConstants = sync.OnceValue(func() []Constants {
	var list []Constants
	err := fs.WalkDir(data.FS, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || path.Ext(name) != ".csv" {
			return err
		}
		text, err := fs.ReadFile(data.FS, name)
		c := Constants{File: folder + name, Digest: digestOf(text)}
		if path.Dir(name) == "." {
			c.Text = string(text)
		}
		list = append(list, c)
		return err
	})
	if err != nil {
		panic("proof: " + err.Error())
	}
	return list
})

// longestLine is how much of a line of a table a message quotes (our own bound).
const longestLine = 160

// ConstantsDiffer names what differs between the constants of a pack and the program's, each by
// its file and its first line.
func ConstantsDiffer(pack, program []Constants) []string {
	var list []string
	here := map[string]Constants{}
	for _, c := range program {
		here[c.File] = c
	}
	for _, c := range pack {
		own, ok := here[c.File]
		delete(here, c.File)
		switch {
		case !ok:
			list = append(list, c.File+" is in the pack, and this program has no such table")
		case c == own:
		case c.Text == own.Text:
			list = append(list, c.File+" differs from the pack's: its digest is another")
		default:
			list = append(list, c.File+" differs from the pack's: "+firstDifference(c.Text, own.Text))
		}
	}
	for _, c := range program {
		if _, missing := here[c.File]; missing {
			list = append(list, c.File+" is not in the pack")
		}
	}
	return list
}

// firstDifference tells the first line in which two texts differ.
func firstDifference(pack, program string) string {
	theirs, ours := strings.Split(pack, "\n"), strings.Split(program, "\n")
	for i := range max(len(theirs), len(ours)) {
		a, b := lineOf(theirs, i), lineOf(ours, i)
		if a != b {
			return fmt.Sprintf("line %d of the pack is %s, here it is %s", i+1, a, b)
		}
	}
	return "nothing in it"
}

func lineOf(lines []string, i int) string {
	if i >= len(lines) {
		return "missing"
	}
	line := []rune(lines[i])
	if len(line) > longestLine {
		return fmt.Sprintf("%q …", string(line[:longestLine]))
	}
	return fmt.Sprintf("%q", lines[i])
}
