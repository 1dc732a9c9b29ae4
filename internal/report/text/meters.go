package textreport

import (
	"io"

	"sipsum/internal/sheet"
)

// Meters prints a shelf of meters.
func Meters(w io.Writer, list []sheet.Instrument, st Style) error {
	p := newPage(st)
	if len(list) == 0 {
		p.line("The shelf has no meter.")
	}
	for _, x := range list {
		p.gap()
		p.line(p.bold(fit(Clean(x.Name, mostName), p.width/2)), "  ", x.Kind)
		facts := [][2]string{}
		for _, o := range x.Offs {
			facts = append(facts, [2]string{"of " + o.At, o.Words(x.Unit)})
		}
		facts = append(facts, [2]string{"one reading", x.Scatter()}, [2]string{"electrode", x.Electrode()}, [2]string{"checked", x.Check()})
		printWideFacts(p, facts)
		out, soon := x.Warnings()
		for _, text := range out {
			p.hanging("  ! ", bulletIndent, Clean(text, mostProse))
		}
		for _, text := range soon {
			p.hanging("  – ", bulletIndent, Clean(text, mostProse))
		}
	}
	p.gap()
	p.paragraph(0, 0, sheet.AboutInstruments)
	return p.write(w)
}

// printWideFacts prints names and texts in two columns, as wide as the longest name wants and a third of the page allows.
func printWideFacts(p *page, list [][2]string) {
	indent := 0
	for _, f := range list {
		indent = max(indent, width(f[0])+2*marginWidth)
	}
	indent = min(indent, p.width/3)
	for _, f := range list {
		if text := Clean(f[1], mostProse); text != "" {
			p.hanging(left("  "+fit(f[0], indent-2*marginWidth), indent), indent, text)
		}
	}
}
