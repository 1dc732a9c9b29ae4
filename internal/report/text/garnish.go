package textreport

import (
	"sipsum/internal/clean"
	"sipsum/internal/sheet"
)

// garnish says what is put on top and whether the figures hold it.
func (p view) garnish() {
	a := p.s.Assay
	var eaten, left []string
	for _, g := range sheet.Toppings(p.s) {
		text := Clean(g.Amount, mostName) + " " + cleanPart(g.PartID, g.Name)
		if len(g.Allergens) > 0 {
			text += " (" + clean.Listed(g.Allergens) + ")"
		}
		if g.Eaten {
			eaten = append(eaten, text)
		} else {
			left = append(left, text)
		}
	}
	of := "Garnish"
	if a.Drink.Serves > 1 {
		of += " of all " + grouped(a.Drink.Serves) + " servings"
	}
	if len(left)+len(eaten) > 0 {
		p.gap()
	}
	if len(left) > 0 {
		p.paragraph(0, 2, of+", not eaten: "+clean.Listed(left)+". "+sheet.NotEaten)
	}
	if len(eaten) > 0 {
		p.paragraph(0, 2, of+", eaten: "+clean.Listed(eaten)+". "+sheet.Eaten)
	}
}

// smelled says what is only smelled, and which volatiles are published of it.
func (p view) smelled() {
	smells := sheet.Smells(p.s.Assay.Drink)
	if len(smells) == 0 {
		return
	}
	p.gap()
	p.paragraph(0, 2, "Aroma. "+sheet.AromaMeans)
	for _, a := range smells {
		sign := ""
		if len(a.Volatiles) > 0 {
			sign = signs([]int{p.notes.Number(clean.UpperFirst(a.Source))})
		}
		p.paragraph(marginWidth, 2, a.Words()+sign+".")
	}
}
