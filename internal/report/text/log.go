package textreport

import (
	"fmt"
	"io"

	"sipsum/internal/sheet"
)

// Log prints a batch log: a block for each component, to be filled in by hand.
func Log(w io.Writer, s *sheet.Sheet, st Style) error { return printPage(w, s, st, sheet.LogPage) }

// logged prints batches.
type logged struct{ *page }

// blank is a place to write in.
const blank = "____________"

func (p logged) print(l sheet.Log) {
	if len(l.Read) > 0 {
		p.heading("Written down")
	}
	for _, text := range l.Read {
		p.hanging("  – ", bulletIndent, Clean(text, mostProse))
	}
	for i := range l.Batches {
		p.batch(&l, &l.Batches[i])
	}
	if len(l.Batches) == 0 {
		p.gap()
		p.paragraph(0, 0, "This drink has no house-made component: there is nothing to log.")
		return
	}
	p.heading("Held hot")
	for _, h := range l.Hot {
		p.paragraph(marginWidth, 2, fmt.Sprintf("%s: at %g °C or above, read %s at %s", rulesName(h.Rules), h.Celsius, blank, blank))
	}
	p.gap()
	p.paragraph(0, 0, sheet.LocalCode)
}

func (p logged) batch(l *sheet.Log, b *sheet.Batch) {
	p.heading(Clean(b.Name, mostName))
	write := func(what, how string) { p.hanging("  "+what+" "+blank+" ", bulletIndent, how) }
	write("made on", fmt.Sprintf("at %s by %s", blank, blank))
	if b.Grams > 0 {
		write("weighed", fmt.Sprintf("g, %.0f g as written", b.Grams))
	} else {
		write("weighed", "g")
	}
	if b.Cooled && b.Control {
		write(fmt.Sprintf("below %g °C at", l.From), "the clock begins")
		write(fmt.Sprintf("%g °C at", l.First), fmt.Sprintf("within %g h; read %s °C", l.Within, blank))
		write(fmt.Sprintf("%g °C at", l.Cold), fmt.Sprintf("within %g h in all; read %s °C", l.InAll, blank))
	}
	write("pH read", "by meter "+blank)
	if b.Cold != 0 {
		write("kept at", fmt.Sprintf("°C, %g °C or colder", b.Cold))
	}
	if b.Days > 0 {
		write("use up by", fmt.Sprintf("day %g, the day it is made counted", b.Days))
	}
	if b.Control {
		p.paragraph(marginWidth, 2, "It needs control of time and temperature, unless a meter's pH or an assessment says otherwise.")
	}
}
