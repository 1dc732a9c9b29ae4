package sheet

import (
	"strings"

	"sipsum/internal/clean"
)

// foams are the foams of the drink: a table of each, its conditions, and once what they mean.
func (p annexed) foams() []Block {
	var list []Block
	for _, f := range FoamsOf(p.Assay) {
		g := &Grid{Caption: clean.UpperFirst(clean.Name(f.Name)), Head: []string{"", "", say("paper.between")}}
		for _, r := range f.Rows {
			name := strings.TrimSpace(r.Name)
			w, indent := Written{Shown: shortly(r.Result)}, 0
			if name != r.Name {
				indent = 1
			}
			g.Rows = append(g.Rows, GridRow{Label: name, Indent: indent, Cells: []GridCell{{Text: w.Bare(), Path: f.Path + "." + name}, {Text: w.Range()}}})
		}
		list = append(list, Block{Role: Tabled, Grid: g})
		b := Block{Role: Small}
		if f.Remark != "" {
			b.Lines = append(b.Lines, Line{Text: f.Remark})
		}
		for _, c := range f.Conditions {
			b.Lines = append(b.Lines, Line{Text: clean.Prose(c.Text), Source: clean.Prose(c.Source)})
		}
		if f.NoRange != "" {
			b.Lines = append(b.Lines, Line{Text: clean.Prose(f.NoRange)})
		}
		list = append(list, b)
	}
	if len(list) > 0 {
		list = append(list, Block{Role: Small, Lines: []Line{{Text: FoamMeans}, {Text: FoamCards}}})
	}
	return list
}
