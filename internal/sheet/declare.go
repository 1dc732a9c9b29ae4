package sheet

import (
	"slices"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/caution"
	"sipsum/internal/constituent"
	"sipsum/internal/ingredientlist"
	"sipsum/internal/label"
	"sipsum/internal/recipe"
)

// Declaration is what must be said of allergens, and what may hurt, under one
// set of rules.
type Declaration struct {
	allergen.Declaration
	Ingredients ingredientlist.List
	Cautions    []caution.Caution
}

// declare works out allergens and cautions under one set of rules.
func declare(rules string, a *assay.Assay, facts label.Facts, hurts caution.Drink, items []allergen.Item) (Declaration, error) {
	d, err := allergen.Declare(rules, items, texts(a.Drink.MayContain))
	if err != nil {
		return Declaration{}, err
	}
	d = d.Judged(measured(rules, facts))
	return Declaration{Declaration: d, Ingredients: ingredientlist.Of(a, d), Cautions: hurts.Under(rules)}, nil
}

// aThousand is how many g or ml the amounts of a limit refer to.
const aThousand = 1000

// measured gives how much a drink holds of the constituent whose amount decides whether a
// class is declared, in mg a kilogram and a litre.
func measured(rules string, facts label.Facts) allergen.Amounts {
	x := facts.Serving[constituent.ID(allergen.Measured(rules))]
	var of allergen.Amounts
	if facts.ServingG > 0 {
		of.PerKg = x.Times(aThousand / facts.ServingG)
	}
	if facts.ServingMl > 0 {
		of.PerLitre = x.Times(aThousand / facts.ServingMl)
	}
	return of
}

// itemsOf gives the foods of a drink as far as allergens and cautions go.
func itemsOf(a *assay.Assay) []allergen.Item {
	items := make([]allergen.Item, len(a.Items))
	for i, it := range a.Items {
		items[i] = itemOf(it)
		if f, ok := a.Drink.OwnFood(it.Food.ID.Code); ok && it.Own {
			items[i].Place = f.Place
			if it.Lender != nil {
				lender := itemOf(recipe.Item{Food: it.Lender})
				items[i].Lender = &lender
			}
		}
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

// NotAssessed reports whether allergens of the drink wait for a decision: a food that
// nobody has looked at, a question that is open, a name that says more than its list.
func (s *Sheet) NotAssessed() bool { return len(s.Undecided()) > 0 }

// ToDecide reports whether anything of the drink waits for a decision: of its allergens, of what was
// read, of a dose that is too much.
func ToDecide(s *Sheet) bool {
	return s.NotAssessed() || Contradicted(s) || len(overdoses(s.Cautions(), english)) > 0
}

// Decisions says what waits for one, each once.
func Decisions(s *Sheet) []string {
	return slices.Concat(Contradictions(s), overdoses(s.Cautions(), english), s.Undecided())
}

// Undecided says what waits for a decision, each once: "fish in core:gelatin: of which animal?".
func (s *Sheet) Undecided() []string { return undecided(s.Allergens()) }

func undecided(declarations []Declaration) []string {
	var list []string
	for _, d := range declarations {
		for _, c := range d.Check {
			if text := c.Short(); !slices.Contains(list, text) {
				list = append(list, text)
			}
		}
	}
	return list
}
