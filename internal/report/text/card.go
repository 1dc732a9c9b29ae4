package textreport

import (
	"strings"

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

// The columns of a card.
const (
	cellWidth      = 18
	referenceWidth = 16
)

// card prints one declaration: rows in the order of the rules, then what they
// want said.
func (p cards) card(c *label.Card) {
	basis, two := c.Basis, c.Basis != label.PerServing
	serving := rounded(c.ServingG, 0) + " g"
	if c.ServingMl > 0 {
		serving = rounded(c.ServingMl, 0) + " ml"
	}
	if !two {
		basis = ""
	}
	p.gap()
	p.line(
		p.bold(p.accent(left(c.Title+", "+rulesName(c.Rules), p.nameWidth()))), right(basis, cellWidth),
		right("serving, "+serving, cellWidth), right(c.Percents, referenceWidth),
	)
	for i := range c.Rows {
		p.declaredRow(&c.Rows[i], two)
	}
	for _, t := range c.Statements {
		p.paragraph(marginWidth, 2, "* "+Clean(t.Text, mostProse)+p.memory(t.FromMemory))
	}
}

// notes prints what is to be known before a card is used.
func (p cards) notes(c *label.Card) {
	for _, n := range c.Notes {
		p.hanging("  – ", bulletIndent, Clean(n.Text, mostProse)+p.memory(n.FromMemory))
	}
}

// notComplete names the rows that rest on incomplete or missing figures.
func (p cards) notComplete(c *label.Card) {
	var rows []string
	for _, name := range sheet.NotComplete(c) {
		rows = append(rows, Clean(name, mostName))
	}
	if len(rows) > 0 {
		p.hanging("  – ", bulletIndent, "not complete: "+join(rows)+"; see sipsum card")
	}
}

// rulesName writes the name of a set of rules: "EU".
func rulesName(rules string) string { return strings.ToUpper(Clean(rules, mostName)) }

func (p cards) nameWidth() int { return p.width - 2*cellWidth - referenceWidth }

func (p cards) declaredRow(r *label.Row, two bool) {
	name := strings.Repeat("  ", 1+r.Indent) + Clean(r.Label, mostName) + p.memory(r.FromMemory)
	basis, serving, reference := "", "", ""
	if r.Serving != nil {
		serving, reference = r.Serving.Printed, r.Serving.Reference+r.Serving.DailyValue
	}
	if r.Line != "" {
		name = strings.Repeat("  ", 1+r.Indent) + Clean(r.Line, mostName) + p.memory(r.FromMemory)
		p.line(left(name, p.width-referenceWidth), right(reference, referenceWidth))
		return
	}
	for _, cell := range []*label.Cell{r.Per100ml, r.Per100g} {
		if two && cell != nil {
			basis = cell.Printed
		}
	}
	// A long figure takes the room of what is on its side.
	basisWidth, servingWidth := max(cellWidth, width(basis)+1), max(cellWidth, width(serving)+1)
	p.line(
		left(name, p.nameWidth()+cellWidth-basisWidth), right(basis, basisWidth), right(serving, servingWidth),
		right(reference, referenceWidth+cellWidth-servingWidth),
	)
}
