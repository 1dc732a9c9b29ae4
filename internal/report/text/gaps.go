package textreport

import (
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/sheet"
)

// gaps says, food by food, what is not known of it.
func (p listing) gaps(s *sheet.Sheet) {
	list := s.Gaps()
	if len(list) == 0 {
		return
	}
	p.heading("What the foods do not say")
	for _, g := range list {
		words := make([]string, len(g.Missing))
		for i, c := range g.Missing {
			words[i] = sheet.WordsFor(c)
		}
		p.paragraph(2, 2, p.foodWords(g.Food)+": "+strings.Join(words, ", "))
	}
}

// remarks prints what else should be known.
func (p view) remarks() {
	list, more := p.s.Notes(p.whole)
	if len(list)+more == 0 {
		return
	}
	p.heading("Notes")
	for _, text := range list {
		p.hanging("  – ", bulletIndent, p.inWords(text))
	}
	if more > 0 {
		p.paragraph(marginWidth, 2, grouped(more)+" more, on how published figures fit together"+seeAssay)
	}
}

// tableEnergy prints the energy that the tables themselves state, beside that
// by the rules in force.
func (p listing) tableEnergy(s *sheet.Sheet) {
	stated, missing := s.TableEnergy()
	if len(stated) == 0 {
		return
	}
	var figures []string
	for _, e := range stated {
		amount := least
		if e.Amount >= leastPrinted {
			amount = rounded(e.Amount, place(e.Amount, 0, mostDigits))
		}
		figures = append(figures, amount+glue+constituent.Must(e.ID).Unit)
	}
	text := "Energy of a serving as the tables print it, for comparison: " + strings.Join(figures, ", ")
	if len(missing) > 0 {
		text += "; not printed of " + p.inWords(strings.Join(missing, ", "))
	}
	p.gap()
	p.paragraph(0, 2, text+".")
}
