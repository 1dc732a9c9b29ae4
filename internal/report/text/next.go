package textreport

import (
	"io"
	"strings"

	"sipsum/internal/drivers"
	"sipsum/internal/sheet"
)

// readingWords names a reading.
var readingWords = map[string]string{"mass": "the mass", "brix": "°Brix", "tds": "dissolved solids", "density": "the density", "abv": "the strength", "ph": "the pH", "ta": "the titratable acidity"}

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
		p.hanging(right(grouped(i+1), 2)+"  ", 4, "Read "+readingWords[g.Reading]+" of "+potWords(g.Of)+": "+expectation(g)+".")
		p.paragraph(4, 2, "write "+lineFor(g.Of, g.Reading))
		var parts []string
		for _, n := range g.Narrows {
			parts = append(parts, sheet.WordsFor(n.Constituent)+glue+"by"+glue+wholePercent(n.By))
		}
		if len(parts) > 0 {
			p.paragraph(4, 2, "narrows "+strings.Join(parts, ", "))
		}
	}
	foot(p, s)
	return p.write(w)
}

func potWords(of string) string {
	if of == "" {
		return "the finished drink"
	}
	return Clean(of, mostName)
}

// expectation says what the recipe expects the instrument to show.
func expectation(g drivers.Suggestion) string {
	last := place(g.Expect.Mean, g.Expect.SD, densityDigits)
	text := "the recipe expects " + rounded(g.Expect.Mean, last)
	if g.Unit != "pH" { // the word stands before it
		text += glue + g.Unit
	}
	if in := span(g.Expect.Low, g.Expect.High, last); in != "" {
		text += " (" + in + ")"
	}
	return text
}
