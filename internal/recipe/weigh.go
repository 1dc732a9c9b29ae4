package recipe

import (
	"strings"

	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// weigh finds how a line's amount becomes grams.
func (r *resolver) weigh(in *Ingredient, f *food.Food) {
	in.Grams = 1
	switch {
	case in.Line.Portion != "":
		r.portion(in, f)
	case in.Line.Amount.Measure.Kind == unit.Volume:
		if f.ID.Table == food.Own && r.undense[f.ID.Code] {
			return // its density is missing: told at the food
		}
		if !food.Stated(f.Density.GramsPerMl) {
			do := "write grams, or give an own food with density:"
			if f.ID.Table == food.Own {
				do = "write grams, or add density: 1.03 g/ml to the food under foods:"
			}
			r.faults.Add(in.Line.Place, do, "%s is a volume, but %s has no density", in.Line.Amount.Measure.Name, f.ID)
			return
		}
		in.Grams, in.GramsSD = f.Density.GramsPerMl, f.Density.SD
	}
	if in.Line.As == "whole" {
		if !food.Stated(f.Edible) {
			r.faults.Add(in.Line.Place, "weigh the edible part and write as: edible", "%s has no edible share", f.ID)
			return
		}
		in.Grams, in.GramsSD = in.Grams*f.Edible, in.GramsSD*f.Edible
	}
}

func (r *resolver) portion(in *Ingredient, f *food.Food) {
	names := make([]string, 0, len(f.Portions))
	for _, p := range f.Portions {
		if p.Name == in.Line.Portion {
			in.Grams, in.GramsSD = p.Grams, p.SD
			return
		}
		names = append(names, note.Quote(p.Name))
	}
	do := "it has none: write grams"
	if len(names) > 0 {
		do = "it has " + strings.Join(names, ", ")
	}
	r.faults.Add(in.Line.Place, do, "%s has no portion %s", f.ID, note.Quote(in.Line.Portion))
}
