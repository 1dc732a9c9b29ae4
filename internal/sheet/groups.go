package sheet

import (
	_ "embed"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

//go:embed groups.csv
var groupsFile string

// Group is a heading and the constituents below it, in the order in which every form shows
// them.
type Group struct {
	Name  string
	Lines []GroupLine
}

// GroupLine is how a constituent is called.
type GroupLine struct {
	ID    constituent.ID
	Words string // empty: not shown
	Short bool   // on the one-page sheet too
}

// Groups gives the order and the words of the constituents.
var Groups = sync.OnceValue(func() []Group {
	var list []Group
	for _, row := range embedded.Parse("groups.csv", strings.NewReader(groupsFile)) {
		if name := row.Text("group"); len(list) == 0 || list[len(list)-1].Name != name {
			list = append(list, Group{Name: name})
		}
		g := &list[len(list)-1]
		id := constituent.Must(constituent.ID(row.Text("constituent"))).ID
		g.Lines = append(g.Lines, GroupLine{ID: id, Words: row.Text("words"), Short: row.Text("short") == "yes"})
	}
	return list
})

// WordsFor gives the words for a constituent: those of groups.csv, else its name
// in the vocabulary.
func WordsFor(c *constituent.Constituent) string {
	for _, g := range Groups() {
		for _, l := range g.Lines {
			if l.ID == c.ID && l.Words != "" {
				return l.Words
			}
		}
	}
	return c.Name
}

// Depth tells how far a line is set in: by one for each of its parents that is
// shown in the group.
func (g *Group) Depth(id constituent.ID, shown func(constituent.ID) bool) int {
	n := 0
	for up := constituent.Must(id).Parent; up != ""; up = constituent.Must(up).Parent {
		for _, l := range g.Lines {
			if l.ID == up && l.Words != "" && shown(up) {
				n++
			}
		}
	}
	return n
}
