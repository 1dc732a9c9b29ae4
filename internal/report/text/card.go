package textreport

import (
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/label"
	"sipsum/internal/sheet"
)

// cards prints nutrition declarations.
type cards struct{ *page }

// print prints every card, and what beside says of each.
func (p cards) print(s *sheet.Sheet, beside func(cards, *label.Card)) {
	for _, c := range s.Cards() {
		p.card(&c)
		beside(p, &c)
	}
}

// card prints one declaration: rows in the order of the rules, then what they
// want said.
func (p cards) card(c *label.Card) {
	rows := p.laidOut(c)
	widths := rows.widths()
	if p.width >= usualWidth || rows.fits(p.width, widths) {
		p.gap()
		for i, row := range rows {
			p.printRow(row, widths, i == 0)
		}
	} else {
		p.folded(rows)
	}
	if len(c.NotSignificant) > 0 {
		p.paragraph(marginWidth, 2, sheet.NotSignificant(c))
	}
	for i, t := range c.Statements {
		text := strings.TrimPrefix(Clean(t.Text, mostProse), "*")
		if i == 0 { // it explains the percentages
			text = "* " + text
		}
		p.paragraph(marginWidth, 2, text+p.memory(t.FromMemory))
	}
}

// notes prints what is to be known before a card is used.
func (p cards) notes(c *label.Card) {
	if c.ServingsLine != "" {
		p.hanging("  – ", bulletIndent, Clean(c.ServingsLine, mostProse))
	}
	for _, n := range c.Notes {
		p.hanging("  – ", bulletIndent, Clean(n.Text, mostProse)+p.memory(n.FromMemory))
	}
	for _, o := range c.Unverified {
		p.hanging("  – ", bulletIndent, "unverified, check the official text: "+Clean(o.Cell, mostProse)+" ("+Clean(o.Source, mostProse)+")")
	}
}

// notComplete names the rows that rest on incomplete or missing figures.
func (p cards) notComplete(c *label.Card) {
	var rows []string
	for _, name := range sheet.NotComplete(c) {
		rows = append(rows, Clean(name, mostName))
	}
	if len(rows) > 0 {
		p.hanging("  – ", bulletIndent, "not complete: "+clean.Listed(rows)+"; see sipsum card")
	}
}

// rulesName writes the name of a set of rules: "EU".
func rulesName(rules string) string { return strings.ToUpper(Clean(rules, mostName)) }
