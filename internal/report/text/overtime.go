package textreport

import (
	"strings"

	"sipsum/internal/figure"
	"sipsum/internal/sheet"
)

// overTime prints how a glass goes while it stands.
type overTime struct {
	*page
	notes *footnotes
}

// The columns of the minutes.
const (
	timeNames = 24
	timeWidth = 7
)

func (p overTime) print(t *sheet.TenMinutes) {
	if t == nil {
		return
	}
	p.heading(sheet.MinutesHead())
	if len(t.Rows) > 0 {
		p.table(t)
	}
	for _, l := range t.Lines {
		p.paragraph(marginWidth, 2, Clean(l.Text, mostProse)+p.notes.All(l.Sources))
	}
}

// table prints a line for each figure: a column for each time, the range at the last. A page that has no
// room for that has a paragraph for each.
func (p overTime) table(t *sheet.TenMinutes) {
	wide := true
	for _, r := range t.Rows {
		wide = wide && timeNames+timeWidth*len(t.Heads)+2+width(rangeOf(r.Cells[len(r.Cells)-1])) <= p.width
	}
	heads := ""
	for _, h := range t.Heads {
		heads += right(h, timeWidth)
	}
	if wide {
		p.line(left(strings.Repeat(" ", marginWidth)+sheet.MinutesColumns(), timeNames), heads)
	} else {
		p.paragraph(marginWidth, 2, strings.Join(t.Heads, ", ")+" "+sheet.MinutesColumns())
	}
	for _, r := range t.Rows {
		name, numbers := r.Name, make([]string, len(r.Cells))
		if r.Unit != "" {
			name += ", " + r.Unit
		}
		line := ""
		for i, c := range r.Cells {
			numbers[i] = cellOf(c)
			line += right(numbers[i], timeWidth)
		}
		at := rangeOf(r.Cells[len(r.Cells)-1])
		if wide {
			p.line(left(strings.Repeat(" ", marginWidth)+name, timeNames), line, "  ", at)
			continue
		}
		if at != "" {
			at = " (" + at + ")"
		}
		p.paragraph(marginWidth, 2, name+": "+strings.Join(numbers, ", ")+at)
	}
}

func cellOf(c figure.Shown) string {
	if c.Unknown {
		return "?"
	}
	return c.Number
}

func rangeOf(c figure.Shown) string {
	if c.Low == "" {
		return ""
	}
	if strings.Contains(c.Low+c.High, "−") {
		return c.Low + " to " + c.High
	}
	return c.Low + "–" + c.High
}
