package textreport

import (
	"io"

	"sipsum/internal/source"
)

// Table is a loaded table and how much is in it.
type Table struct {
	source.Table
	Foods, Values int
}

// Format is a format of published tables that can be loaded.
type Format struct {
	Name, Title, Licence, Needs string
}

// Tables prints the loaded tables.
func Tables(w io.Writer, list []Table, st Style) error {
	p := newPage(st)
	if len(list) == 0 {
		p.line("No table is loaded.")
	}
	for _, t := range list {
		p.gap()
		p.line(p.bold(fit(Clean(t.ID, mostName), p.width/2)), "  ", grouped(t.Foods), " foods, ", grouped(t.Values), " values")
		printFacts(p, [][2]string{
			{"title", t.Title}, {"edition", t.Edition}, {"publisher", t.Publisher},
			{"licence", t.Licence}, {"cite as", t.Citation}, {"hash", t.Hash},
		})
	}
	return p.write(w)
}

// Formats prints the formats that can be loaded.
func Formats(w io.Writer, list []Format, st Style) error {
	p := newPage(st)
	for _, f := range list {
		p.gap()
		p.line(p.bold(Clean(f.Name, mostName)), "  ", fit(Clean(f.Title, mostName), p.width-width(f.Name)-2))
		printFacts(p, [][2]string{{"needs", f.Needs}, {"licence", f.Licence}})
	}
	return p.write(w)
}

// facts prints names and texts in two columns; empty texts are left out.
func printFacts(p *page, list [][2]string) {
	const indent = 13
	for _, fact := range list {
		if text := Clean(fact[1], mostProse); text != "" {
			p.hanging(left("  "+fact[0], indent), indent, text)
		}
	}
}
