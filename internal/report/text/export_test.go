package textreport

import (
	"io"

	"sipsum/internal/assay"
	"sipsum/internal/curdling"
	"sipsum/internal/sheet"
)

// The wrapping has rules of its own to be tested.
var (
	Wrap    = wrap
	Width   = width
	Signs   = signs
	Grouped = grouped
)

// Words gives the words of every constituent on a page, by id.
func Words() map[string]string {
	words := map[string]string{}
	for _, g := range sheet.Groups() {
		for _, l := range g.Lines {
			words[string(l.ID)] = l.Words
		}
	}
	return words
}

// CurdleMap prints the section of a page about curdling.
func CurdleMap(w io.Writer, c *curdling.Judgement, whole bool, st Style) error {
	p := newPage(st)
	milk{p}.print(c, whole)
	return p.write(w)
}

// Solutions prints the section of a page about the drink and its components as
// solutions.
func Solutions(w io.Writer, a *assay.Assay, works sheet.PHWorks, st Style) error {
	p, notes := newPage(st), &footnotes{}
	p.whole = true
	solutions{p, notes, works}.print(a, true)
	p.sources(notes)
	return p.write(w)
}
