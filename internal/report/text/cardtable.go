package textreport

import (
	"strings"

	"sipsum/internal/label"
)

// The least widths of the columns of a card.
const (
	cellWidth      = 18
	referenceWidth = 16
)

// tableRow is a line of a card: a name, a cell for each column and one for the percentage. A
// line whose words the rules prescribe is a name alone.
type tableRow struct {
	name  string
	cells []string
	whole bool
}

type tableRows []tableRow

// laidOut lays a card out, its head first.
func (p cards) laidOut(c *label.Card) tableRows {
	serving := rounded(c.ServingG, 0) + " g"
	if c.ServingMl > 0 {
		serving = rounded(c.ServingMl, 0) + " ml"
	}
	columns := c.Columns
	head := tableRow{name: c.Title + ", " + rulesName(c.Rules)}
	for _, basis := range columns {
		if basis == label.PerServing {
			basis = "serving, " + serving
		}
		head.cells = append(head.cells, basis)
	}
	head.cells = append(head.cells, c.Percents)
	list := tableRows{head}
	for i := range c.Rows {
		r := &c.Rows[i]
		if r.LeftOut {
			continue
		}
		row := tableRow{name: r.Label}
		if r.Line != "" {
			row.name, row.whole = r.Line, true
		}
		row.name = strings.Repeat("  ", 1+r.Indent) + Clean(row.name, mostName) + p.memory(r.FromMemory)
		percent := ""
		for _, basis := range columns {
			cell := r.On(basis)
			if cell == nil {
				cell = &label.Cell{}
			}
			text := cell.Printed
			switch {
			case basis == label.PerServing:
				percent = cell.Reference + cell.DailyValue
			case cell.Reference != "": // a share of 100 ml stands beside its amount
				text += " (" + cell.Reference + ")"
			}
			row.cells = append(row.cells, text)
		}
		row.cells = append(row.cells, percent)
		list = append(list, row)
	}
	return list
}

// widths gives the width of each column: of its longest cell and a space, and no less than
// its usual one.
func (l tableRows) widths() []int {
	widths := make([]int, len(l[0].cells))
	for _, row := range l {
		for i, text := range row.cells {
			if row.whole && i < len(row.cells)-1 {
				continue
			}
			least := cellWidth
			if i == len(row.cells)-1 {
				least = referenceWidth
			}
			widths[i] = max(widths[i], least, width(text)+1)
		}
	}
	return widths
}

// fits reports whether a table of so wide columns leaves room for the names before them.
func (l tableRows) fits(page int, widths []int) bool {
	for _, w := range widths {
		page -= w
	}
	for _, row := range l[1:] {
		if !row.whole && strings.Join(row.cells, "") != "" && width(row.name) > page+1 {
			return false
		}
	}
	return page > 0
}

// folded prints a card on a page that is too narrow for its columns: under each name its
// cells, which say what they are per where there are several.
func (p cards) folded(rows tableRows) {
	head := rows[0]
	several := len(head.cells) > 2
	title := head.name
	if !several {
		title += ", " + head.cells[0]
	}
	p.heading(title)
	for _, row := range rows[1:] {
		deep := len(row.name) - len(strings.TrimLeft(row.name, " "))
		var cells []string
		for i, text := range row.cells {
			basis, _, _ := strings.Cut(head.cells[i], ",")
			switch {
			case text == "" || row.whole && i < len(row.cells)-1:
				continue
			case i == len(row.cells)-1:
				text += "*"
			case several:
				text = basis + " " + text
			}
			cells = append(cells, strings.ReplaceAll(text, " ", glue))
		}
		text := row.name[deep:]
		if len(cells) > 0 {
			text += ": " + strings.Join(cells, glue+"· ")
		}
		p.paragraph(deep, 2, text)
	}
}

// printRow prints a line of a card. A long name takes the room of empty cells beside it.
func (p cards) printRow(row tableRow, widths []int, head bool) {
	room := p.width
	for _, w := range widths {
		room -= w
	}
	cells, skip := "", 0
	for i := range row.cells {
		if row.whole && i < len(row.cells)-1 {
			room, skip = room+widths[i], i+1
		}
	}
	over := max(width(row.name)-room, 0) // a long name takes the room of what is on its side
	for i, text := range row.cells[skip:] {
		w := widths[skip+i]
		taken := min(over, max(w-width(text)-1, 0))
		over -= taken
		cells += right(text, w-taken)
	}
	name := left(row.name, max(room, 0))
	if head {
		name = p.bold(p.accent(name))
	}
	p.line(name, cells)
}
