package textreport

import (
	"io"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/sheet"
)

// readingWords names a reading.
var readingWords = map[string]string{"mass": "the mass", "brix": "°Brix", "tds": "dissolved solids", "density": "the density", "abv": "the strength", "ph": "the pH", "ta": "the titratable acidity"}

const (
	mostSuggestions = 10
	mostNarrowings  = 4
)

// Next prints the readings not yet taken, the most useful first.
func Next(w io.Writer, s *sheet.Sheet, st Style) error {
	p := newPage(st)
	p.title(Clean(s.Assay.Drink.Name, mostName), "next")
	list := s.Assay.Suggestions
	if len(list) == 0 {
		p.paragraph(0, 0, "No further reading narrows what this drink is judged by.")
		p.foot(s)
		return p.write(w)
	}
	p.paragraph(0, 0, "Readings not yet taken, by how much they narrow the constituents of the sensory categories.")
	for i, g := range list[:min(len(list), mostSuggestions)] {
		p.gap()
		p.hanging(right(grouped(i+1), 2)+"  ", 4, "Read "+readingWords[g.Reading]+" of "+potWords(g.Of)+": "+expectation(g)+".")
		var parts []string
		for _, n := range g.Narrows[:min(len(g.Narrows), mostNarrowings)] {
			if wholePercent(n.By) == "0"+glue+"%" {
				break
			}
			parts = append(parts, wordsFor(n.Constituent)+glue+"by"+glue+wholePercent(n.By))
		}
		if len(parts) > 0 {
			p.paragraph(4, 2, "narrows "+strings.Join(parts, ", "))
		}
	}
	p.foot(s)
	return p.write(w)
}

func potWords(of string) string {
	if of == "" {
		return "the finished drink"
	}
	return Clean(of, mostName)
}

// expectation says what the recipe expects the instrument to show.
func expectation(g assay.Suggestion) string {
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
