package textreport

import (
	_ "embed"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

//go:embed groups.csv
var groupsFile string

// group is a heading and the constituents below it.
type group struct {
	name  string
	lines []groupLine
}

// groupLine is how a constituent is called on a page.
type groupLine struct {
	id    constituent.ID
	words string // empty: not shown
	short bool   // on the one-page sheet too
}

// groups reads the order and the words of the constituents on a page.
var groups = sync.OnceValue(func() []group {
	var list []group
	for _, row := range embedded.Parse("groups.csv", strings.NewReader(groupsFile)) {
		if name := row.Text("group"); len(list) == 0 || list[len(list)-1].name != name {
			list = append(list, group{name: name})
		}
		g := &list[len(list)-1]
		id := constituent.Must(constituent.ID(row.Text("constituent"))).ID
		g.lines = append(g.lines, groupLine{id: id, words: row.Text("words"), short: row.Text("short") == "yes"})
	}
	return list
})

// wordsFor gives the words for a constituent: those of groups.csv, else its name
// in the vocabulary.
func wordsFor(c *constituent.Constituent) string {
	for _, g := range groups() {
		for _, l := range g.lines {
			if l.id == c.ID && l.words != "" {
				return l.words
			}
		}
	}
	return c.Name
}

// depth tells how far a line is set in: by one for each of its parents that is
// shown in the group.
func (g *group) depth(id constituent.ID, shown func(constituent.ID) bool) int {
	n := 0
	for up := constituent.Must(id).Parent; up != ""; up = constituent.Must(up).Parent {
		for _, l := range g.lines {
			if l.id == up && l.words != "" && shown(up) {
				n++
			}
		}
	}
	return n
}
