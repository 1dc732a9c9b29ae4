package textreport

import (
	"io"
	"strings"

	"sipsum/internal/sheet"
)

// Next prints the readings not yet taken, the most useful first.
func Next(w io.Writer, s *sheet.Sheet, st Style) error {
	p := newPage(st)
	p.title(Clean(s.Assay.Drink.Name, mostName), "next")
	list := s.Suggestions()
	if len(list) == 0 {
		p.paragraph(0, 0, "No further reading narrows what this drink is judged by.")
		foot(p, s)
		return p.write(w)
	}
	p.paragraph(0, 0, "Readings not yet taken, by how much they narrow the constituents of the sensory categories.")
	for i, g := range list {
		p.gap()
		p.hanging(right(grouped(i+1), 2)+"  ", 4, "Read "+sheet.ReadingWords(g.Reading)+" of "+sheet.PotWords(g.Of)+": "+sheet.Expectation(g)+".")
		p.paragraph(4, 2, "write "+sheet.LineFor(g.Of, g.Reading))
		var parts []string
		for _, n := range g.Narrows {
			parts = append(parts, sheet.NarrowsBy(n))
		}
		if len(parts) > 0 {
			p.paragraph(4, 2, "narrows "+strings.Join(parts, ", "))
		}
	}
	foot(p, s)
	return p.write(w)
}
