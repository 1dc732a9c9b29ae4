package textreport

import (
	"fmt"
	"io"
	"strings"

	"sipsum/internal/sheet"
	"sipsum/internal/speech"
)

// toWhom heads a speech.
var toWhom = map[speech.Register]string{speech.Judge: "To the judges", speech.Guest: "To a guest"}

// Speech prints what may be said of a drink in its registers, with the works behind each sentence.
func Speech(w io.Writer, s *sheet.Sheet, registers []speech.Register, st Style) error {
	v := view{newPage(st), s, &footnotes{}}
	v.head("speech")
	pace := speech.Limits()
	for _, register := range registers {
		said := sheet.SpeechOf(s, register)
		v.heading(toWhom[register])
		v.paragraph(0, 2, fmt.Sprintf("%d words: %.0f to %.0f s, at %g to %g words a minute%s", said.Words, said.Fast, said.Slow, pace.Fast.Value, pace.Slow.Value, signs([]int{v.notes.Number(pace.Slow.Source + ".")})))
		v.spoken(said.Lines)
		v.unspoken("Left out for time", said.LeftOut)
		v.unspoken("Not spoken", said.Unspoken)
	}
	v.gap()
	v.paragraph(0, 2, sheet.SpeechMeans)
	v.sources(v.notes)
	foot(v.page, s)
	return v.write(w)
}

// spoken prints sentences, a paragraph for each category, and beside each the works behind it.
func (p view) spoken(lines []speech.Line) {
	text := ""
	for i, l := range lines {
		var numbers []int
		for _, w := range l.Sources {
			numbers = append(numbers, p.notes.Number(citation(w)))
		}
		text += " " + Clean(l.Text, mostProse) + signs(numbers)
		if i+1 == len(lines) || lines[i+1].Category != l.Category {
			p.gap()
			p.paragraph(marginWidth, 0, strings.TrimSpace(text))
			text = ""
		}
	}
}

// unspoken lists what a speech has not.
func (p view) unspoken(name string, list []speech.Left) {
	if len(list) == 0 {
		return
	}
	p.gap()
	p.line(name + ":")
	for _, l := range list {
		text := Clean(l.Text, mostProse)
		if l.Why != speech.ForTime {
			text += " (" + Clean(l.Why, mostProse) + ")"
		}
		p.hanging("  – ", bulletIndent, text)
	}
}
