package sheet

import (
	"fmt"
	"slices"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/clean"
	"sipsum/internal/label"
)

// stateOf is the form of a state on every page: its mark, its key among the words, and a
// sign where a cell is too narrow for words.
var stateOf = map[allergen.State]struct{ mark, key, sign string }{
	allergen.StateContains:   {"contains", "state.contains", "●"},
	allergen.StateMayContain: {"may", "state.may", "◐"},
	allergen.StateCheck:      {"check", "state.check", "?"},
	allergen.StateNoneFound:  {"none", "state.none", "–"},
}

// Leaf is a menu on a page. As many drinks stand beside each other as columns fit; the rest
// follow below.
func (m *Menu) Leaf(columns int) *Leaf {
	l := &Leaf{Kind: "menu", Language: English, Label: say("kind.menu"), Title: say("menu")}
	for _, d := range m.Drinks {
		l.Below = append(l.Below, clean.Name(d.Name))
	}
	all := make([]int, len(m.Drinks))
	for i := range all {
		all[i] = i
	}
	for _, x := range m.Matrices() {
		for part := range slices.Chunk(all, columns) {
			l.add(Block{Role: Tabled, Grid: m.matrixGrid(x, part)})
		}
	}
	l.lines(Small, "", []Line{{Text: say("legend")}})
	l.lines(Boxed, say("tocheck"), m.each(func(d Offer) []Line { return d.Open }))
	l.lines("", say("contradictions"), m.each(func(d Offer) []Line { return plainLines(d.Against) }))
	for _, t := range m.Figures() {
		for part := range slices.Chunk(t.Drinks, columns) {
			l.add(Block{Role: Tabled, Grid: m.figuresGrid(t, part)})
		}
	}
	l.lines("", say("advice"), m.each(func(d Offer) []Line { return plainLines(d.Advice) }))
	l.Foot = append(l.Foot, say("calculated"))
	if slices.ContainsFunc(l.Blocks, func(b Block) bool { return b.Grid != nil && b.Grid.hatched() }) {
		l.Foot = append(l.Foot, say("unmeasured"))
	}
	if slices.ContainsFunc(l.Blocks, func(b Block) bool { return b.hasDagger() }) {
		l.Foot = append(l.Foot, say("memory"))
	}
	l.Foot = append(l.Foot, clean.Name(m.Program))
	return l
}

// each gives the lines of every drink, led by its name; what is said of several is said once.
func (m *Menu) each(of func(Offer) []Line) []Line {
	var lines []Line
	for _, d := range m.Drinks {
		for _, line := range of(d) {
			name := clean.Name(d.Name)
			i := slices.IndexFunc(lines, func(have Line) bool { return have.Text == line.Text })
			if i < 0 {
				line.Lead = name
				lines = append(lines, line)
			} else {
				lines[i].Lead += ", " + name
			}
		}
	}
	return lines
}

// matrixGrid is the allergen matrix of some of the drinks, a class a row.
func (m *Menu) matrixGrid(x Matrix, part []int) *Grid {
	g := &Grid{Caption: say("matrix", rulesName(x.Rules)), Head: []string{""}}
	for _, n := range part {
		g.Head = append(g.Head, clean.Name(m.Drinks[n].Name))
	}
	for i, c := range x.Classes {
		row := GridRow{Label: clean.Name(c.Name)}
		for _, n := range part {
			form := stateOf[x.States[n][i]]
			row.Cells = append(row.Cells, GridCell{Text: x.Within[n][i].cell(x.States[n][i], c.Named), Sign: form.sign, Mark: form.mark})
		}
		g.Rows = append(g.Rows, row)
	}
	return g
}

// cell tells in a cell how a drink stands to a class, and which nuts it contains or may contain where the rules
// want them named.
func (h Held) cell(state allergen.State, named bool) string {
	text := say(stateOf[state].key)
	if !named {
		return text
	}
	if len(h.Contains) > 0 {
		text += " " + clean.Prose(strings.Join(h.Contains, ", "))
	}
	if len(h.MayContain) > 0 {
		if state != allergen.StateMayContain {
			text += ", " + say("state.may")
		}
		text += " " + clean.Prose(strings.Join(h.MayContain, ", "))
	}
	return text
}

// figuresGrid is a table of some of the drinks.
func (m *Menu) figuresGrid(t SideBySide, part []int) *Grid {
	g := &Grid{Caption: fmt.Sprintf("%s, %s, %s", clean.Name(t.Title), rulesName(t.Rules), t.Basis), Head: []string{""}}
	for _, n := range part {
		head := clean.Name(m.Drinks[n].Name)
		if t.Basis == label.PerServing {
			head = say("figures", head, m.Drinks[n].serving())
		}
		g.Head = append(g.Head, head)
	}
	for _, r := range t.Rows {
		row := GridRow{Label: r.Label, Indent: r.Indent}
		for i, n := range t.Drinks {
			if !slices.Contains(part, n) {
				continue
			}
			cell := GridCell{Text: say("missing")}
			if r.Rows[i] != nil {
				cell = cellOf(r.Rows[i], r.Rows[i].On(t.Basis))
			}
			row.Cells = append(row.Cells, cell)
		}
		g.Rows = append(g.Rows, row)
	}
	return g
}

// serving is how large a serving is.
func (d *Offer) serving() string {
	if d.ServingMl > 0 {
		return whole(d.ServingMl, "ml")
	}
	return whole(d.ServingG, "g")
}
