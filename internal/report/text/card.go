package textreport

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"sipsum/internal/label"
	"sipsum/internal/sheet"
)

// Cards prints the nutrition declarations of a drink, one for each set of rules.
func Cards(w io.Writer, s *sheet.Sheet, st Style) error {
	p := newPage(st)
	p.head(s, "card")
	p.cards(s, false)
	p.cardLegend()
	p.foot(s)
	return p.write(w)
}

// cards prints every card; on a short page the notes of what is not complete
// become one line.
func (p *page) cards(s *sheet.Sheet, short bool) {
	for _, c := range s.Cards() {
		p.card(&c)
		if short {
			p.notComplete(&c)
		} else {
			p.cardNotes(&c)
		}
	}
}

// The columns of a card.
const (
	cellWidth      = 18
	referenceWidth = 16
)

// card prints one declaration: rows in the order of the rules, then what they
// want said.
func (p *page) card(c *label.Card) {
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
		p.bold(p.accent(left(c.Title+", "+rulesName(c.Rules), p.cardName()))), right(basis, cellWidth),
		right("serving, "+serving, cellWidth), right(c.Percents, referenceWidth),
	)
	for i := range c.Rows {
		p.cardRow(&c.Rows[i], two)
	}
	for _, t := range c.Statements {
		p.paragraph(marginWidth, 2, "* "+Clean(t.Text, mostProse)+p.memory(t.FromMemory))
	}
	for _, claim := range c.Claims {
		verdict := "not allowed"
		if claim.Allowed {
			verdict = "allowed"
		}
		p.paragraph(marginWidth, 2, fmt.Sprintf("claim “%s”: %s, %s", Clean(claim.Claim, mostName), verdict, Clean(claim.Why, mostProse)))
	}
}

// cardNotes prints what is to be known before a card is used.
func (p *page) cardNotes(c *label.Card) {
	for _, n := range c.Notes {
		p.hanging("  – ", bulletIndent, Clean(n.Text, mostProse)+p.memory(n.FromMemory))
	}
}

// notComplete names the rows that rest on incomplete or missing figures.
func (p *page) notComplete(c *label.Card) {
	var rows []string
	for _, r := range c.Rows {
		if slices.ContainsFunc(c.Notes, func(n label.Note) bool { return n.Row == r.Key }) {
			rows = append(rows, Clean(strings.TrimPrefix(r.Label, "of which "), mostName))
		}
	}
	if len(rows) > 0 {
		p.hanging("  – ", bulletIndent, "not complete: "+join(rows)+"; see sipsum card")
	}
}

// rulesName writes the name of a set of rules: "EU".
func rulesName(rules string) string { return strings.ToUpper(Clean(rules, mostName)) }

func (p *page) cardName() int { return p.width - 2*cellWidth - referenceWidth }

func (p *page) cardRow(r *label.Row, two bool) {
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
		left(name, p.cardName()+cellWidth-basisWidth), right(basis, basisWidth), right(serving, servingWidth),
		right(reference, referenceWidth+cellWidth-servingWidth),
	)
}

// memory gives the sign for what rests on a rule entered from memory.
func (p *page) memory(is bool) string {
	if !is {
		return ""
	}
	p.dagger = true
	return " †"
}

func (p *page) cardLegend() {
	if p.dagger {
		p.gap()
		p.paragraph(0, 0, daggerText+".")
	}
}
