package textreport

import (
	"io"
	"strings"

	"sipsum/internal/sheet"
)

// Next prints the readings not yet taken, the most useful first, and what a titration would tell; of
// a pot all that a titration of it would tell.
func Next(w io.Writer, s *sheet.Sheet, pot string, st Style) error {
	if pot != "" {
		return Leaf(w, sheet.NextLeaf(s, pot), st)
	}
	p := newPage(st)
	p.title(Clean(s.Assay.Drink.Name, mostName), "next")
	readingsToTake(p, s)
	if kits := sheet.KitLines(s); len(kits) > 0 {
		p.gap()
		for _, text := range kits {
			p.hanging("  – ", 4, text+".")
		}
	}
	foot(p, s)
	return p.write(w)
}

func readingsToTake(p *page, s *sheet.Sheet) {
	list := s.Suggestions()
	if len(list) == 0 {
		p.paragraph(0, 0, "No further reading narrows what this drink is judged by.")
		return
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
}
