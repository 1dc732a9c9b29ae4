package sheet

import (
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/label"
)

// gridOf is the table of a card, as its rules order and name it.
func gridOf(c *label.Card) *Grid {
	g := &Grid{Caption: say("figures", clean.Name(c.Title), rulesName(c.Rules)), Shape: shapeOf(c), Head: []string{""}}
	if c.ServingsLine != "" && c.Columns[0] == label.PerServing { // elsewhere the head of its column says it
		g.Lead = []string{clean.Prose(c.ServingsLine)}
	}
	for _, basis := range c.Columns {
		g.Head = append(g.Head, headOf(c, basis))
	}
	if c.Percents != "" {
		g.Head = append(g.Head, clean.Name(c.Percents))
	}
	for i := range c.Rows {
		if !c.Rows[i].LeftOut {
			g.Rows = append(g.Rows, gridRow(c, &c.Rows[i]))
		}
	}
	return g
}

// upright is the shape of a card whose rules draw it, as 21 CFR 101.9(d) does: a box, heavy
// rules, the energy largest; a short table is drawn alike.
const upright = "vertical"

func shapeOf(c *label.Card) string {
	if c.Shape != "" {
		return upright
	}
	return ""
}

// headOf is the head of a column: that of the serving says how large it is.
func headOf(c *label.Card, basis string) string {
	switch {
	case basis != label.PerServing:
		return basis
	case c.ServingMl > 0:
		return say("figures", say("size"), whole(c.ServingMl, "ml"))
	}
	return say("figures", say("size"), whole(c.ServingG, "g"))
}

func gridRow(c *label.Card, r *label.Row) GridRow {
	row := GridRow{Label: daggered(clean.Name(r.Label), r.FromMemory), Indent: r.Indent}
	if r.Line != "" {
		row.Label, row.Whole = daggered(clean.Name(r.Line), r.FromMemory), true
	}
	for _, basis := range c.Columns {
		if !row.Whole {
			row.Cells = append(row.Cells, cellOf(r, r.On(basis)))
		}
	}
	if c.Percents != "" {
		cell := GridCell{}
		if r.Serving != nil {
			cell.Text = clean.Name(r.Serving.Reference + r.Serving.DailyValue)
		}
		row.Cells = append(row.Cells, cell)
	}
	return row
}

// cellOf is a figure of a row; nil: the card has none there.
func cellOf(r *label.Row, cell *label.Cell) GridCell {
	if cell == nil {
		return GridCell{Text: say("missing")}
	}
	text := clean.Name(cell.Printed)
	if cell != r.Serving && cell.Reference != "" { // a share of 100 ml stands beside its amount
		text += " (" + clean.Name(cell.Reference) + ")"
	}
	return GridCell{Text: text, Unknown: r.Unknown}
}

// NotSignificant names the rows that a short table is without, as 21 CFR 101.9(f) has it said.
func NotSignificant(c *label.Card) string {
	var names []string
	for _, name := range c.NotSignificant {
		names = append(names, clean.LowerFirst(strings.TrimPrefix(clean.Name(name), "+ ")))
	}
	return say("insignificant", clean.Listed(names))
}
