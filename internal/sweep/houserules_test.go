package sweep_test

import (
	"context"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/houserules"
)

// forbiddenNeverPasses forbids every food that the file names, by its code, by its name before the
// comma and by its kind, at whatever depth and through whatever step it is poured: none of them passes.
func forbiddenNeverPasses(s *subject, broken say) {
	of := houserules.Case{Assay: s.assay}
	for _, d := range s.sheet.Allergens() {
		of.Declarations = append(of.Declarations, d.Declaration)
	}
	for _, f := range s.written() {
		name, _, _ := strings.Cut(f.Name(), ",")
		h := &drink.HouseRules{Forbidden: drink.Forbidden{
			Ingredients: []drink.Word{{Text: f.ID.String()}, {Text: name}, {Text: f.Name()}}, Kinds: []drink.Word{{Text: f.Group}},
		}}
		for _, m := range f.Marks {
			if m.Kind == "allergen" && m.Value != "" {
				h.Forbidden.Allergens = append(h.Forbidden.Allergens, drink.Word{Text: m.Value})
			}
		}
		answer, err := of.Judge(context.Background(), h)
		if err != nil {
			broken(1, "%s: %v", f.ID, err)
			continue
		}
		for _, l := range answer.Of(houserules.Pass) {
			broken(1, "%s is in it, and “%s” passes: %s", f.ID, l.Rule, l.Why)
		}
	}
}
