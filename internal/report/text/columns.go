package textreport

import "strings"

// The room that names have beside their columns: our own bounds. Columns that leave them less
// are folded, and what they say follows on a line of its own; over more dots the eye loses the
// line.
const (
	leastNames = 24
	mostNames  = 50
)

// column is a cell behind a figure: its text, how wide its column is, and what it says where it
// is folded.
type column struct {
	text  string
	width int
	right bool
	below string // empty: the text
}

// tableLine is a line of a table: a sign in the margin, a name with its sources and a dotted
// line, a figure, and columns.
type tableLine struct {
	margin       string
	name, signs  string
	number, unit string // as wide as their columns
	columns      []column
}

// beside gives the room for the names of a table whose lines have so much besides, and how many
// of its columns leave them their least.
func (p *page) beside(fixed int, widths ...int) (names, n int) {
	names = p.width - fixed
	for n < len(widths) && names-widths[n] >= leastNames {
		names -= widths[n]
		n++
	}
	return min(names, mostNames), n
}

// tabled prints a line of a table. A name that is too long has a line of its own, and what the
// page has no room for follows below.
func (p *page) tabled(l tableLine) {
	var widths []int
	for _, c := range l.columns {
		widths = append(widths, c.width)
	}
	names, n := p.beside(width(l.margin)+width(l.number)+width(l.unit), widths...)
	deep := len(l.name) - len(strings.TrimLeft(l.name, " "))
	under := width(l.margin) + deep + 2
	if name := l.name[deep:]; deep+width(name) > names {
		p.hanging(l.margin+l.name[:deep], under, name)
		l.name, l.margin = strings.Repeat(" ", deep), strings.Repeat(" ", width(l.margin))
	}
	sources := ""
	if width(l.name)+width(l.signs) > names { // the name is worth more
		sources, l.signs = "sources"+l.signs, ""
	}
	cells, folded := fold(l.columns, n)
	p.line(l.margin, leaders(l.name+l.signs, names), p.bold(l.number), l.unit, cells)
	if len(folded) > 0 {
		p.paragraph(under, 0, strings.Join(folded, glue+"· "))
	}
	if sources != "" {
		p.paragraph(under, 0, sources)
	}
}

// fold writes the columns that stand on the line, and what the others say below it. A long cell
// takes the room of the next; one that leaves it too little folds it.
func fold(columns []column, n int) (cells string, folded []string) {
	over := 0
	for i, c := range columns {
		room := c.width - over
		switch {
		case c.text == "" && i < n:
			cells += strings.Repeat(" ", max(room, 0))
			over = max(-room, 0)
		case i >= n || width(c.text) > room && i == n-1:
			if c.below != "" {
				c.text = c.below
			}
			if c.text != "" {
				folded = append(folded, strings.ReplaceAll(strings.TrimSpace(c.text), " ", glue))
			}
		case c.right:
			cells += right(c.text, room)
			over = 0
		default:
			text := left(c.text, room)
			cells += text
			if over = width(text) - room; over == 0 && strings.HasSuffix(text, " ") || i == len(columns)-1 {
				continue
			}
			cells += " "
			over++
		}
	}
	return cells, folded
}
