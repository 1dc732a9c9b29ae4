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
	p.paragraph(marginWidth, 2, l.Heading+": "+listed(l.Ingredients)+"."+p.cited(l.Source)+p.status(l.Status))
	if len(l.NotEaten) > 0 {
		p.paragraph(marginWidth, 2, "Garnish, not eaten: "+listed(l.NotEaten)+".")
	}
	p.paragraph(marginWidth, 2, strings.TrimSpace(sheet.InOrder+" "+Clean(l.Note, mostProse)))
}

// listed writes ingredients as a list has them.
func listed(list []ingredientlist.Ingredient) string {
	texts := make([]string, len(list))
	for i, x := range list {
		var text strings.Builder
		for _, part := range x.Name {
			if part.Strong {
				text.WriteString(strings.ToUpper(part.Text))
			} else {
				text.WriteString(part.Text)
			}
		}
		texts[i] = Clean(text.String(), mostName)
		if len(x.Of) > 0 {
			texts[i] += " (" + listed(x.Of) + ")"
		}
	}
	return strings.Join(texts, ", ")
}
