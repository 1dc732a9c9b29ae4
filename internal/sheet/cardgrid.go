package sheet

import (
	"sipsum/internal/clean"
	"sipsum/internal/label"
)

// gridOf is the table of a card, as its rules order and name it.
func gridOf(c *label.Card) *Grid {
	g := &Grid{Caption: say("figures", clean.Name(c.Title), rulesName(c.Rules)), Shape: shapeOf(c), Head: []string{""}}
	for _, basis := range c.Columns {
		g.Head = append(g.Head, headOf(c, basis))
	}
	if c.Percents != "" {
		g.Head = append(g.Head, clean.Name(c.Percents))
	}
	for i := range c.Rows {
		g.Rows = append(g.Rows, gridRow(c, &c.Rows[i]))
	}
	return g
}

// upright is the shape of a card whose figures are of a serving alone, as 21 CFR 101.9(d)
// draws it: a box, heavy rules, the energy largest.
const upright = "vertical"

func shapeOf(c *label.Card) string {
	if c.Basis == label.PerServing {
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
	return GridCell{Text: clean.Name(cell.Printed), Unknown: r.Unknown}
}
