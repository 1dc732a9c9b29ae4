package sheet

import (
	"slices"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/drink"
	"sipsum/internal/food"
)

// treatedWith gives the techniques whose words name an allergen that no food of the drink
// brings: "washed with peanut butter" pours none, and somebody has to say whether any stays. So
// with what is only smelled: the oil of an expressed nut lands in the glass.
func treatedWith(a *assay.Assay, foods []allergen.Item) []allergen.Item {
	var brought []string
	for _, it := range foods {
		brought = append(brought, allergen.Assess(it).Leaves...)
	}
	var list []allergen.Item
	unbrought := func(leaf string) bool { return !slices.Contains(brought, leaf) }
	add := func(text, component string) {
		it := allergen.Item{Food: food.ID{Table: "treat", Code: text}, Name: text, Stated: true, Own: true, Eaten: true}
		if component != "" {
			it.Path = []string{component}
		}
		if slices.ContainsFunc(allergen.Assess(it).Missed, unbrought) {
			list = append(list, it)
		}
	}
	for name, steps := range stepsOf(a) {
		for _, step := range steps {
			if treat, ok := step.(*drink.Treat); ok {
				add(treat.Technique, name)
			}
		}
	}
	for _, text := range aromaWords(a) {
		add(text, "")
	}
	return list
}
