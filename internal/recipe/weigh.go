package recipe

import (
	"fmt"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// weigh finds how a line's amount becomes grams.
func (r *resolver) weigh(in *Ingredient, f *food.Food) {
	in.Grams = 1
	switch {
	case in.Line.Counted:
		r.count(in, f)
	case in.Line.Portion != "":
		r.portion(in, f)
	case in.Line.Amount.Measure.Kind == unit.Volume:
		if !r.fill(in, f) {
			return
		}
	}
	if in.Line.As == "whole" {
		if !food.Stated(f.Edible) {
			r.faults.Add(in.Line.Place, "weigh the edible part and write as: edible", "%s has no edible share", f.ID)
			return
		}
		in.Grams, in.GramsSD = in.Grams*f.Edible, in.GramsSD*f.Edible
	}
}

// fill finds what a millilitre of a food weighs: by its density, or else by what its table says
// of a spoon or a cup of it, packed as it may be.
func (r *resolver) fill(in *Ingredient, f *food.Food) bool {
	if food.Stated(f.Density.GramsPerMl) {
		in.Grams, in.GramsSD = f.Density.GramsPerMl, f.Density.SD
		return true
	}
	if p, m, ok := filled(f, in.Line.Amount.Measure); ok {
		in.Grams, in.GramsSD = p.Grams/m.Factor, unit.Packing()*p.Grams/m.Factor
		return true
	}
	own, isOwn := r.ownEntry(f)
	switch {
	case isOwn && own.Per.Measure.Kind == unit.Volume:
		return false // that it lacks its density has been said
	case isOwn:
		r.faults.Add(in.Line.Place, "add density: 1.03 g/ml to it under foods:, or write grams", "%s is a volume, but %s has no density", in.Line.Amount.Measure.Name, f.ID)
	default:
		r.faults.Add(in.Line.Place, "write grams"+asPortions(in.Line, f.ID, f.Portions)+"; or describe it under foods: with density:", "%s is a volume, but %s has no density", in.Line.Amount.Measure.Name, f.ID)
	}
	return false
}

// filled gives the portion of a food that is a measure of volume: the one that was written, or
// else the largest, which is weighed best.
func filled(f *food.Food, wanted unit.Measure) (best food.Portion, as unit.Measure, ok bool) {
	for _, p := range f.Portions {
		m, is := unit.FindMeasure(p.Name)
		switch {
		case !is || m.Kind != unit.Volume:
		case m.Name == wanted.Name:
			return p, m, true
		case m.Factor > as.Factor:
			best, as, ok = p, m, true
		}
	}
	return best, as, ok
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

// count finds the portion that a food is counted by. Where its table has more than one that the
// word may mean, or none, the writer chooses.
func (r *resolver) count(in *Ingredient, f *food.Food) {
	var found []food.Portion
	for _, p := range f.Portions {
		if unit.IsPortion(p.Name, in.Line.Portion) {
			found = append(found, p)
		}
	}
	if len(found) == 1 {
		in.Line.Portion, in.Grams, in.GramsSD = found[0].Name, found[0].Grams, found[0].SD
		return
	}
	what := fmt.Sprintf("%s has more than one %s", f.ID, in.Line.Portion)
	if len(found) == 0 {
		what, found = fmt.Sprintf("no table says what one %s of %s weighs", in.Line.Portion, f.ID), f.Portions
	}
	r.faults.Add(in.Line.Place, "write grams"+asPortions(in.Line, f.ID, found), "%s", what)
}

const mostPortions = 3 // that an error shows

// asPortions shows a line with portions of its food, after other advice.
func asPortions(line drink.Line, id food.ID, portions []food.Portion) string {
	count := line.Count
	if count == 0 {
		count = line.Amount.Number
	}
	text := ""
	for i, p := range portions {
		if i == mostPortions {
			return text + fmt.Sprintf("; %d more: sipsum food show %s", len(portions)-i, id)
		}
		text += fmt.Sprintf(", or: - {food: %q, portion: %q, count: %s}", id, p.Name, unit.Number(count))
	}
	return text
}
