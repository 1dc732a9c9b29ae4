package svgreport

import (
	"strings"

	"sipsum/internal/sheet"
)

// What a table keeps for its labels, and how far a label is set in.
const (
	labels  = 0.36
	indent  = 10.0
	rowTall = 16.0
	boxed   = 6.0 // between a table and its box
)

// grid draws a table; a cell that nobody has determined is hatched.
func (c *canvas) grid(g *sheet.Grid) {
	from := c.y
	c.write(margin, inner, captionFace, g.Caption)
	for _, above := range g.Lead {
		c.write(margin, inner, bodyFace, above)
	}
	label := inner * labels
	cell := (inner - label) / float64(max(len(g.Head)-1, 1))
	c.heads(g, label, cell)
	c.y += 5
	c.ruled(margin, wide-margin, ink)
	for _, r := range g.Rows {
		c.row(g, r, label, cell)
	}
	if g.Shape != "" { // the rules prescribe a box
		c.box(margin-boxed, from, inner+2*boxed, c.y-from+boxed, `fill="none" stroke="`+ink+`"`)
		c.y += boxed
	}
}

// heads sets the heads of the columns so that they stand on the table.
func (c *canvas) heads(g *sheet.Grid, label, cell float64) {
	right := func(i int) float64 { return margin + label + cell*float64(i+1) }
	tall := 1
	for _, h := range g.Head[1:] {
		tall = max(tall, len(softFace.wrap(h, cell-6)))
	}
	for i, h := range g.Head[1:] {
		lines := softFace.wrap(h, cell-6)
		for n, line := range lines {
			c.at(right(i), c.y+softFace.tall()*float64(tall-len(lines)+n+1), softFace, "end", line)
		}
	}
	c.y += softFace.tall() * float64(tall)
}

func (c *canvas) row(g *sheet.Grid, r sheet.GridRow, label, cell float64) {
	gone := len(g.Head) - 1 - len(r.Cells) // columns that a whole line takes
	f := boldFace
	if r.Indent > 0 {
		f = bodyFace
	}
	x := margin + indent*float64(r.Indent)
	names := f.wrap(r.Label, label+cell*float64(gone)-indent*float64(r.Indent)-4)
	texts := make([][]string, len(r.Cells))
	tall := len(names)
	for i, at := range r.Cells {
		texts[i] = bodyFace.wrap(strings.TrimSpace(at.Sign+" "+at.Text), cell-4)
		tall = max(tall, len(texts[i]))
	}
	from := c.y
	c.y += rowTall + float64(tall-1)*bodyFace.tall()
	for i, at := range r.Cells {
		c.cell(at, texts[i], margin+label+cell*float64(gone+i), from, cell)
	}
	for n, line := range names {
		c.at(x, from+12+float64(n)*bodyFace.tall(), f, "start", line)
	}
	c.ruled(margin, wide-margin, rule)
}

// cell sets the lines of a cell.
func (c *canvas) cell(at sheet.GridCell, lines []string, x, from, room float64) {
	if at.Unknown {
		c.box(x+2, from+2, room-2, c.y-from-4, `fill="url(#unmeasured)"`)
		taken := bodyFace.takes(strings.Join(lines, ""))
		c.box(x+room-taken-2, from+2, taken+2, c.y-from-4, `fill="`+paperIs+`"`)
	}
	f := bodyFace
	if at.Mark != "" && at.Mark != "none" {
		f = boldFace
	}
	for n, line := range lines {
		c.at(x+room, from+12+float64(n)*bodyFace.tall(), f, "end", line)
	}
}
