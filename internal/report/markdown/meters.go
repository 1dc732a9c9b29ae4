package markdownreport

import (
	"io"

	"sipsum/internal/sheet"
)

// Meters prints a shelf of meters.
func Meters(w io.Writer, list []sheet.Instrument) error {
	var p page
	p.line("# Meters")
	for _, x := range list {
		p.paragraph("## " + escape(x.Name))
		p.line("\n", escape(x.Kind), "\n")
		for _, o := range x.Offs {
			p.line("- of ", escape(o.At), ": **", escape(o.Words(x.Unit)), "**")
		}
		p.line("- one reading: ", escape(x.Scatter()))
		if text := x.Electrode(); text != "" {
			p.line("- electrode: ", escape(text))
		}
		p.line("- checked: ", escape(x.Check()))
		out, soon := x.Warnings()
		for _, text := range out {
			p.line("- **", escape(text), "**")
		}
		for _, text := range soon {
			p.line("- ", escape(text))
		}
	}
	p.paragraph(escape(sheet.AboutInstruments))
	_, err := io.WriteString(w, p.text.String())
	return err
}
