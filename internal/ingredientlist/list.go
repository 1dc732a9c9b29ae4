package ingredientlist

import (
	"cmp"
	"slices"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/food"
)

// List is what a drink is made of.
type List struct {
	Rule
	Ingredients []Ingredient // the most of it first
	NotEaten    []Ingredient // garnish that stays behind, in the order of the file
}

// Ingredient is a food, or a component with what it is made of.
type Ingredient struct {
	Name  []Part
	Food  food.ID // empty of a component
	Grams float64 // of all servings together, or of all that was made of the component
	Of    []Ingredient
}

// Part is a piece of a name. What is strong is emphasised: it names an allergen.
type Part struct {
	Text   string
	Strong bool
}

// Of writes the list of a drink, with the allergens of a declaration emphasised.
func Of(a *assay.Assay, d allergen.Declaration) List {
	w := writer{yields: map[string]assay.Yield{}, declaration: d}
	for _, y := range a.Yields {
		w.yields[y.Component] = y
	}
	list := List{Rule: ruleOf(d.Rules), Ingredients: w.list("")}
	for _, it := range a.Items {
		if !it.Eaten && !slices.ContainsFunc(list.NotEaten, func(x Ingredient) bool { return x.Food == it.Food.ID }) {
			list.NotEaten = append(list.NotEaten, w.food(it.Food, 0))
		}
	}
	return list
}

// writer follows components down to foods.
type writer struct {
	yields      map[string]assay.Yield // by component; "" is the drink
	declaration allergen.Declaration
}

// list gives what a component is made of, what is poured twice once.
func (w writer) list(component string) []Ingredient {
	var list []Ingredient
	for _, p := range w.yields[component].Weighed {
		same := func(x Ingredient) bool {
			return p.Food != nil && x.Food == p.Food.ID || p.Food == nil && x.Food == (food.ID{}) && x.Name[0].Text == p.Component
		}
		if i := slices.IndexFunc(list, same); i >= 0 {
			list[i].Grams += p.Grams
			continue
		}
		if p.Food != nil {
			list = append(list, w.food(p.Food, p.Grams))
			continue
		}
		list = append(list, Ingredient{Name: []Part{{Text: p.Component}}, Grams: p.Grams, Of: w.list(p.Component)})
	}
	slices.SortStableFunc(list, func(x, y Ingredient) int { return cmp.Compare(y.Grams, x.Grams) })
	return list
}

func (w writer) food(f *food.Food, grams float64) Ingredient {
	return Ingredient{Name: emphasise(nameOf(f), w.declaration.Named(f.ID.String())), Food: f.ID, Grams: grams}
}
