package csvreport

import (
	"io"
	"strconv"

	"sipsum/internal/label"
	"sipsum/internal/sheet"
)

// cardHeader are the columns of a declaration.
var cardHeader = []string{"drink", "rules", "row", "label", "basis", "printed", "value", "most", "percent", "known", "from_memory"}

// Cards prints the declarations of a drink, a figure a line.
func Cards(w io.Writer, s *sheet.Sheet) error {
	var rows [][]string
	for _, c := range s.Cards() {
		rows = append(rows, cardRows(s.Assay.Drink.Name, &c)...)
	}
	return write(w, cardHeader, rows)
}

func cardRows(drink string, c *label.Card) [][]string {
	var rows [][]string
	for i := range c.Rows {
		r := &c.Rows[i]
		for _, basis := range c.Columns {
			cell := r.On(basis)
			if cell == nil {
				continue
			}
			rows = append(rows, []string{
				text(drink), text(c.Rules), text(r.Key), text(r.Label), text(basis), text(cell.Printed), number(figureOf(r, cell)), number(cell.Most),
				text(cell.Reference + cell.DailyValue), yes(!r.Open()), yes(r.FromMemory),
			})
		}
	}
	return rows
}

// figureOf is the figure of a cell; of a row that prints none there is none either.
func figureOf(r *label.Row, cell *label.Cell) *float64 {
	if r.Unknown {
		return nil
	}
	return cell.Value
}

func yes(is bool) string { return strconv.FormatBool(is) }

// Leaf prints the lines of a card for guests or for the stage: what they are about, and what
// they say.
func Leaf(w io.Writer, l *sheet.Leaf) error {
	rows := [][]string{{"name", "", text(l.Title)}}
	for _, b := range l.Blocks {
		for _, f := range b.Figures {
			rows = append(rows, []string{"figure", text(f.Label), text(f.Text)})
		}
		for _, line := range b.Lines {
			lead := line.Lead
			line.Lead = ""
			rows = append(rows, []string{about(b), text(lead), text(line.Sentence())})
		}
		if b.Grid != nil {
			rows = append(rows, gridRows(b.Grid)...)
		}
	}
	return write(w, []string{"about", "what", "text"}, rows)
}

// about is the heading of a block, or what it does on the leaf.
func about(b sheet.Block) string {
	if b.Heading != "" {
		return text(b.Heading)
	}
	return text(string(b.Role))
}

// gridRows writes each cell of a table under its row and its column.
func gridRows(g *sheet.Grid) [][]string {
	var rows [][]string
	for _, r := range g.Rows {
		before := len(g.Head) - len(r.Cells)
		for i, c := range r.Cells {
			if c.Text != "" {
				rows = append(rows, []string{text(g.Caption), text(r.Label + " (" + g.Head[before+i] + ")"), text(c.Text)})
			}
		}
	}
	return rows
}
