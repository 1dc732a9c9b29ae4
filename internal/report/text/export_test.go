package textreport

import (
	"io"

	"sipsum/internal/assay"
	"sipsum/internal/curdling"
	"sipsum/internal/sheet"
)

// The rounding and the wrapping have rules of their own to be tested.
var (
	Place   = place
	Rounded = rounded
	Upward  = upward
	Span    = span
	Wrap    = wrap
	Width   = width
	Signs   = signs
	Grouped = grouped
)

// MostDigits is how many significant digits a figure has at most.
const MostDigits = mostDigits

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
