package sheet

import (
	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/caution"
	"sipsum/internal/label"
	"sipsum/internal/recipe"
)

// Declaration is what must be said of allergens, and what may hurt, under one
// set of rules.
type Declaration struct {
	allergen.Declaration
	Cautions []caution.Caution
}

// declare works out allergens and cautions under one set of rules.
func declare(rules string, a *assay.Assay, facts label.Facts, items []allergen.Item) (Declaration, error) {
	d, err := allergen.Declare(rules, items, texts(a.Drink.MayContain))
	if err != nil {
		return Declaration{}, err
	}
	return Declaration{Declaration: d, Cautions: warn(rules, a, facts, items)}, nil
}

// itemsOf gives the foods of a drink as far as allergens and cautions go.
func itemsOf(a *assay.Assay) []allergen.Item {
	items := make([]allergen.Item, len(a.Items))
	for i, it := range a.Items {
		items[i] = itemOf(it)
	}
	return items
}

func itemOf(it recipe.Item) allergen.Item {
	item := allergen.Item{
		Food: it.Food.ID, Name: it.Food.Name(), Group: it.Food.Group, PublisherGroup: it.Food.PublisherGroup,
		Chemical: it.Food.Chemical, Marks: it.Food.Marks, Stated: it.Stated, Own: it.Own, Path: it.Path, Eaten: it.Eaten,
	}
	for i, n := range it.Food.Names {
		if i > 0 {
			item.Names = append(item.Names, n.Text)
		}
	}
	return item
}

// NotAssessed reports whether a food of the drink has allergens that nobody has
// looked for: somebody has to decide.
func (s *Sheet) NotAssessed() bool { return notAssessed(s.Allergens()) }

func notAssessed(list []Declaration) bool {
	for _, d := range list {
		for _, c := range d.Check {
			if c.Code == allergen.CheckNotAssessed {
				return true
			}
		}
	}
	return false
}
