package textreport

import (
	"strings"

	"sipsum/internal/ingredientlist"
	"sipsum/internal/sheet"
)

// ingredients prints the list of ingredients, what names an allergen in capitals.
func (p declared) ingredients(l *ingredientlist.List) {
	if len(l.Ingredients) == 0 {
		return
	}
	p.gap()
	p.paragraph(marginWidth, 2, l.Heading+": "+sheet.IngredientsText(l.Ingredients)+"."+p.cited(l.Source)+p.status(l.Status))
	if len(l.NotEaten) > 0 {
		p.paragraph(marginWidth, 2, sheet.NotEatenList+sheet.IngredientsText(l.NotEaten)+".")
	}
	p.paragraph(marginWidth, 2, strings.TrimSpace(sheet.InOrder+" "+Clean(l.Note, mostProse)))
}
