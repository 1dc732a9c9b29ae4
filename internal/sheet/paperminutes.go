package sheet

import (
	"strconv"

	"sipsum/internal/clean"
)

// overTime is how a glass goes while it stands: a table, a column for each time, and below it what stays and by which
// rates it was followed.
func (p annexed) overTime() []Block {
	t := TenMinutesOf(p.Sheet)
	if t == nil {
		return nil
	}
	b := Block{Role: Tabled}
	if len(t.Rows) > 0 {
		b.Grid = &Grid{Caption: say("minutes.caption"), Head: append([]string{MinutesColumns()}, t.Heads...)}
	}
	for _, r := range t.Rows {
		row := GridRow{Label: joined(clean.UpperFirst(r.Name)+",", r.Unit)}
		if r.Unit == "" {
			row.Label = clean.UpperFirst(r.Name)
		}
		for i, c := range r.Cells {
			cell := GridCell{Unknown: c.Unknown}
			if !c.Unknown {
				cell.Path = "minutes." + r.Key + "." + strconv.Itoa(i)
				cell.Text = c.Number
			}
			row.Cells = append(row.Cells, cell)
		}
		b.Grid.Rows = append(b.Grid.Rows, row)
		last := r.Cells[len(r.Cells)-1]
		if in := (Written{Shown: last}).Range(); in != "" {
			b.Lines = append(b.Lines, Line{Text: say("minutes.last", clean.UpperFirst(r.Name), t.Heads[len(t.Heads)-1], joined(in, r.Unit))})
		}
	}
	for _, l := range t.Lines {
		var numbers []int
		for _, source := range l.Sources {
			numbers = append(numbers, p.notes.Number(source))
		}
		b.Lines = append(b.Lines, Line{Text: clean.Prose(l.Text) + Numbered(numbers)})
	}
	return []Block{b}
}
