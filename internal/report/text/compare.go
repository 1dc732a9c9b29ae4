package textreport

import (
	"io"
	"strings"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/sheet"
)

// Compare prints foods side by side: a column each, a line for every constituent
// that one of them has. missing names foods of tables that are not loaded.
func Compare(w io.Writer, foods []*food.Food, lines []food.Comparison, missing []string, st Style) error {
	p := newPage(st)
	p.title("Foods side by side", "compare")
	for i, f := range foods {
		p.hanging(columnSign(i)+"  ", 3, Clean(f.ID.String(), mostName)+"  "+Clean(f.Name(), mostName))
	}
	most := max((p.width-comparedName-comparedUnit-2)/comparedLeast, 1)
	for from := 0; from < len(foods); from += most { // as many at a time as stand side by side
		p.columnsOf(lines, from, min(from+most, len(foods)))
	}
	disagree, copied, borrowed, kin := false, false, false, false
	for _, line := range lines {
		for _, c := range line.Cells {
			borrowed = borrowed || lent(c)
			kin = kin || c.Value.By == food.ByKin
		}
		disagree, copied = disagree || line.Disagree, copied || line.Copied && !line.Disagree
	}
	p.gap()
	legend := "in 100 g · – the table says nothing · ? unknown · < below this limit · tr trace · (0) assumed"
	if kin {
		legend += " · k " + byKinText
	}
	if disagree {
		legend += " · ≠ two figures differ by more than three standard deviations of both"
	}
	if borrowed {
		legend += " · " + borrowedSign + " " + borrowedText
	}
	if copied {
		legend += " · =" + sameFigure + ": nobody has measured a difference"
	}
	p.paragraph(0, 0, legend)
	if len(missing) > 0 {
		p.paragraph(0, 0, "In no loaded table: "+Clean(strings.Join(missing, ", "), mostProse))
	}
	return p.write(w)
}

// The columns of foods side by side.
const (
	comparedName  = 24
	comparedUnit  = 4
	comparedLeast = 8
	comparedMost  = 14
)

// columnsOf prints some of the foods side by side.
func (p *page) columnsOf(lines []food.Comparison, from, to int) {
	cell := min((p.width-comparedName-comparedUnit-2)/(to-from), comparedMost)
	head := strings.Repeat(" ", comparedName+comparedUnit)
	for i := from; i < to; i++ {
		head += right(columnSign(i), cell)
	}
	p.gap()
	p.line(p.bold(p.accent(head)))
	for _, line := range lines {
		text := left(fit(sheet.WordsFor(line.Constituent), comparedName-1), comparedName) + left(line.Constituent.Unit, comparedUnit)
		for _, c := range line.Cells[from:to] {
			text += right(compared(c), cell)
		}
		switch {
		case line.Disagree:
			text += " ≠"
		case line.Copied:
			text += " ="
			if room := p.width - width(text); room >= width(sameFigure) {
				text += sameFigure
			}
		}
		p.line(text)
	}
}

// sameFigure is said of what foods have of one row: between these nobody knows a difference.
const sameFigure = " same figure, copied"

// lent reports whether a figure is another food's.
func lent(c food.Compared) bool { return c.By == food.Borrowed && food.Stated(c.Value.Amount) }

// columnSign names a column: A, B, C.
func columnSign(i int) string { return string(rune('A' + i)) }

// compared is one cell: the figure as the table prints it, or why there is none.
func compared(c food.Compared) string {
	if !c.Stated {
		return "–"
	}
	if lent(c) {
		return printed(c.Value) + borrowedSign
	}
	return printed(c.Value)
}

// printed is a figure as a table states it: zeros that are assumed in brackets,
// limits with <.
func printed(v food.Value) string {
	switch {
	case v.State == estimate.Unknown:
		return "?"
	case v.State == estimate.Below && food.Stated(v.Limit):
		return "<" + plain(v.Limit)
	case v.State == estimate.Trace:
		return "tr"
	case v.State == estimate.Assumed:
		return "(" + plain(v.Amount) + ")"
	}
	if v.By == food.ByKin {
		return "k " + plain(v.Amount)
	}
	return plain(v.Amount)
}
