package sheet

import (
	"slices"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/drink"
	"sipsum/internal/food"
)

// treatedWith gives the techniques whose words name an allergen that no food of the drink
// brings: "washed with peanut butter" pours none, and somebody has to say whether any stays.
func treatedWith(a *assay.Assay, foods []allergen.Item) []allergen.Item {
	var brought []string
	for _, it := range foods {
		brought = append(brought, allergen.Assess(it).Leaves...)
	}
	var list []allergen.Item
	for name, steps := range stepsOf(a) {
		for _, step := range steps {
			treat, ok := step.(*drink.Treat)
			if !ok {
				continue
			}
			it := allergen.Item{Food: food.ID{Table: "treat", Code: treat.Technique}, Name: treat.Technique, Stated: true, Own: true, Eaten: true}
			if name != "" {
				it.Path = []string{name}
			}
			unbrought := func(leaf string) bool { return !slices.Contains(brought, leaf) }
			if slices.ContainsFunc(allergen.Assess(it).Missed, unbrought) {
				list = append(list, it)
			}
		}
	}
	return list
}
