package recipe

import (
	"fmt"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// beyondPublished looks at the figures of a coffee that are more than anybody has published of its
// group: a note where that may be, since nobody has measured them all, and a fault where it is so
// much more that a unit slipped.
func (r *resolver) beyondPublished(o *drink.OwnFood, f *food.Food, found Claims) []food.Note {
	if o.Coffee == nil {
		return nil
	}
	var list []food.Note
	for _, c := range constituent.All() {
		most, source := food.MostIn(f, c)
		v, ok := f.Value(c.ID)
		if !ok || !food.Stated(most) || !food.Stated(v.Amount) || v.Amount <= most {
			continue
		}
		k := found[c.ID]
		text := fmt.Sprintf("%s makes %s %s in 100 g, and the most that is published of a %s is %s (%s)", k.text, note.Grams(v.Amount), c.Unit, f.Group, note.Grams(most), source)
		if v.Amount > most*unit.LimitOf("figure of a coffee", "times the highest published").High {
			r.faults.Add(k.place, "check the figure, its unit and per:", "own food %s: %s", note.Quote(o.Code), text)
			continue
		}
		list = append(list, food.Note{Kind: noteCoffee, Constituent: c.ID, Text: text + ": check it before you rely on it"})
	}
	return list
}
