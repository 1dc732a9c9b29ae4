package textreport

import (
	"io"
	"strings"

	"sipsum/internal/sheet"
)

// Leaf prints a leaf that is handed out: a card for guests or for the stage, a menu.
func Leaf(w io.Writer, l *sheet.Leaf, st Style) error {
	p := leaf{newPage(st)}
	p.title(l.Title, l.Label)
	p.paragraph(0, 2, strings.Join(l.Below, " · "))
	for i := range l.Blocks {
		p.block(&l.Blocks[i])
	}
	p.gap()
	p.line(p.accent(strings.Repeat("─", p.width)))
	p.paragraph(0, 0, strings.Join(l.Foot, " · "))
	return p.write(w)
}

// leaf is a leaf being printed.
type leaf struct{ *page }

// leadWidth is the column in which leads stand before what they lead.
const leadWidth = 12

func (p leaf) block(b *sheet.Block) {
	if b.Role == sheet.InLine {
		p.inLine(b)
		return
	}
	if b.Heading != "" {
		p.heading(b.Heading)
	} else {
		p.gap()
	}
	for _, f := range b.Figures {
		p.line("  ", left(f.Label, leadWidth), p.bold(f.Text))
	}
	if b.Grid != nil {
		p.grid(b.Grid)
	}
	for _, l := range b.Lines {
		p.sentence(b.Role, l)
	}
}

// inLine prints a heading and a list on one line.
func (p leaf) inLine(b *sheet.Block) {
	texts := make([]string, len(b.Lines))
	for i, l := range b.Lines {
		texts[i] = l.Text
	}
	if !strings.HasSuffix(p.text.String(), "\n\n") && !p.afterInLine() {
		p.gap()
	}
	p.hanging("  "+left(b.Heading, leadWidth), leadWidth+2, strings.Join(texts, " · "))
}

// afterInLine reports whether the line above is one of a list: lists stand together.
func (p leaf) afterInLine() bool {
	lines := strings.Split(strings.TrimSuffix(p.text.String(), "\n"), "\n")
	return strings.HasPrefix(lines[len(lines)-1], "  ")
}

// sentence prints a line; the guest's box has a bar at its side.
func (p leaf) sentence(role sheet.Role, l sheet.Line) {
	lead, text := "  – ", l.Sentence()
	if role == sheet.Boxed {
		lead = "  ┃ "
	}
	if role == sheet.Spoken {
		p.hanging("  "+left(l.Lead, leadWidth), leadWidth+2, l.Text)
		return
	}
	if role == sheet.Ticked {
		p.hanging("  ", bulletIndent, text)
		return
	}
	if role == sheet.Small || role == sheet.Tabled {
		p.paragraph(marginWidth, 2, text)
		return
	}
	for i, part := range wrap(text, p.width-bulletIndent) {
		switch {
		case role == sheet.Boxed && l.Strong != "" && l.Text == "":
			part = p.bold(part)
		case role != sheet.Boxed && i > 0:
			lead = "    "
		}
		p.line(lead, part)
	}
}

// A table keeps this much for its labels; what does not fit beside follows below.
const (
	leastLabels = 24
	leastAlone  = 12 // beside one column that is too wide for that
	leastCell   = 9
	mostHead    = 16
)

// grid prints a table, as many columns at a time as fit.
func (p leaf) grid(g *sheet.Grid) {
	for _, part := range wrap(g.Caption, p.width-marginWidth) {
		p.line("  ", p.bold(p.accent(part)))
	}
	for _, above := range g.Lead {
		p.paragraph(marginWidth, 2, above)
	}
	widths := columnWidths(g, func(head string) []string { return []string{head} })
	if p.overfull(g, widths) { // heads of several words may take several lines
		widths = columnWidths(g, strings.Fields)
	}
	for from := 0; from < len(widths); {
		to, taken := from, 0
		for to < len(widths) && (to == from || taken+widths[to] <= p.width-leastLabels) {
			taken += widths[to]
			to++
		}
		if from > 0 {
			p.gap()
		}
		p.columns(g, widths, from, to, max(p.width-taken, leastAlone))
		from = to
	}
}

// overfull reports whether columns leave its labels too little room.
func (p leaf) overfull(g *sheet.Grid, widths []int) bool {
	taken, labels := 0, leastLabels
	for _, w := range widths {
		taken += w
	}
	for _, r := range g.Rows {
		labels = max(labels, width(r.Label)+2*r.Indent+marginWidth+1)
	}
	return taken+labels > p.width
}

// columnWidths gives each column behind the labels the room of its longest cell, and of the
// longest part of its head.
func columnWidths(g *sheet.Grid, parts func(string) []string) []int {
	widths := make([]int, len(g.Head)-1)
	for i := range widths {
		widths[i] = leastCell
		for _, word := range parts(g.Head[i+1]) {
			widths[i] = max(widths[i], min(width(word), mostHead)+2)
		}
		for _, r := range g.Rows {
			if at := i - (len(widths) - len(r.Cells)); at >= 0 {
				widths[i] = max(widths[i], width(cellText(r.Cells[at]))+2)
			}
		}
	}
	return widths
}

// columns prints some of the columns of a table.
func (p leaf) columns(g *sheet.Grid, widths []int, from, to, labels int) {
	heads := make([][]string, to-from)
	tall := 0
	for i := range heads {
		heads[i] = wrap(g.Head[1+from+i], widths[from+i]-2)
		tall = max(tall, len(heads[i]))
	}
	for n := range tall {
		line := strings.Repeat(" ", labels)
		for i, h := range heads {
			text := ""
			if at := n - (tall - len(h)); at >= 0 { // heads stand on the table
				text = h[at]
			}
			line += right(text, widths[from+i])
		}
		p.line(line)
	}
	for _, r := range g.Rows {
		gone := len(widths) - len(r.Cells) // columns that a whole line takes
		room := labels
		for i := from; i < min(gone, to); i++ {
			room += widths[i]
		}
		line := left(fit(strings.Repeat("  ", 1+r.Indent)+r.Label, room-1), room)
		for i := max(from, gone); i < to; i++ {
			line += right(cellText(r.Cells[i-gone]), widths[i])
		}
		p.line(line)
	}
}

func cellText(c sheet.GridCell) string {
	if c.Sign == "" {
		return c.Text
	}
	return c.Sign + " " + c.Text
}
