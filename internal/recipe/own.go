package recipe

import (
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// ownFood turns a food of the drink file into a food like any other.
func (r *resolver) ownFood(o *drink.OwnFood) {
	f := &food.Food{
		ID:      food.ID{Table: food.Own, Code: o.Code},
		Names:   []food.Name{{Text: o.Name}},
		Group:   o.Group,
		Edible:  food.None,
		Density: food.Density{GramsPerMl: food.None, SD: food.None},
	}
	if o.Density != nil {
		f.Density = food.Density{GramsPerMl: o.Density.Number, SD: amount.HalfSD(o.Density), Source: o.Source}
	}
	per100g := 100 / o.Per.Base()
	if o.Per.Measure.Kind == unit.Volume {
		density := 1.0 // of water, so that the figures are read for their own faults
		if o.Density == nil {
			r.faults.Add(o.Place, "add density: 1.03 g/ml", "own food %s states its values per volume, but no density", note.Quote(o.Code))
			r.undense[o.Code] = true
		} else {
			density = o.Density.Number
		}
		per100g /= density
	}
	d := r.declaration(o, per100g)
	found, meant := Claims{}, []meaning{}
	for i, v := range slices.Concat(o.Values, r.labValues(o)) {
		ofPack := i < len(o.Values)
		m, ok := r.meaning(d, v, ofPack)
		if !ok {
			continue
		}
		if _, twice := f.Value(m.of.ID); twice {
			r.faults.Add(v.Place, "keep one of them", "%s of own food %s is stated twice", m.of.Name, note.Quote(o.Code))
			continue
		}
		value := d.value(m, ofPack)
		if f.Values = append(f.Values, value); ofPack {
			meant = append(meant, m)
		}
		if k, ok := ClaimOf(m.Stated, m.of, m.factor); ok {
			found[m.of.ID] = k
		}
	}
	if !r.undense[o.Code] && r.checkOwn(o, found) {
		r.ownNotes[f.ID] = append(d.notes(meant), r.beyondPublished(o, f, found)...)
	}
	if g, _ := food.GroupOf(o.Group); o.Coffee != nil && !g.Coffee {
		r.faults.Add(o.Coffee.Place, "write group: coffee bean, or group: coffee drink, if it is one", "own food %s has coffee: and is of no group of coffees", note.Quote(o.Code))
	}
	if o.Assessed {
		f.Marks = statedAllergens(o)
	}
	r.own[o.Code] = f
}

// labValues are what a laboratory found of a coffee.
func (r *resolver) labValues(o *drink.OwnFood) []drink.Stated {
	if o.Coffee == nil || o.Coffee.Lab == nil {
		return nil
	}
	return o.Coffee.Lab.Values
}

func statedAllergens(o *drink.OwnFood) []food.Mark {
	if len(o.Allergens) == 0 {
		return []food.Mark{{Kind: "allergen", Source: o.Source}}
	}
	marks := make([]food.Mark, len(o.Allergens))
	for i, code := range o.Allergens {
		marks[i] = food.Mark{Kind: "allergen", Value: code.Text, Source: o.Source}
	}
	return marks
}

// ownEntry gives what the drink file says of an own food.
func (r *resolver) ownEntry(f *food.Food) (*drink.OwnFood, bool) {
	if f.ID.Table != food.Own {
		return nil, false
	}
	for i := range r.drink.Foods {
		if r.drink.Foods[i].Code == f.ID.Code {
			return &r.drink.Foods[i], true
		}
	}
	return nil, false
}
