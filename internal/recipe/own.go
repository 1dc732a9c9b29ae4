package recipe

import (
	"sipsum/internal/amount"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
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
		if o.Density == nil {
			r.faults.Add(o.Place, "add density: 1.03 g/ml", "own food %s states its values per volume, but no density", note.Quote(o.Code))
			return
		}
		per100g /= o.Density.Number
	}
	found := Claims{}
	for _, v := range o.Values {
		value, c, factor, ok := r.ownValue(o, v, per100g)
		if !ok {
			continue
		}
		f.Values = append(f.Values, value)
		if k, ok := ClaimOf(v, c, factor); ok {
			found[c.ID] = k
		}
	}
	r.checkOwn(o, found)
	if o.Assessed {
		f.Marks = statedAllergens(o)
	}
	r.own[o.Code] = f
}

// ownValue brings one stated value by a factor to the vocabulary's unit per 100 g.
func (r *resolver) ownValue(o *drink.OwnFood, v drink.Stated, per100g float64) (value food.Value, c *constituent.Constituent, factor float64, ok bool) {
	c, ok = constituent.Find(v.Tag)
	if !ok {
		r.faults.Add(v.Place, "use a tagname such as SUGAR, FAT, PROCNT, NA", "unknown constituent %s", note.Quote(v.Tag))
		return food.Value{}, nil, 0, false
	}
	factor, ok = unit.Convert(v.Unit, c.Unit)
	if !ok && v.State != drink.Unknown && v.State != drink.Trace {
		r.faults.Add(v.Place, "write it in "+c.Unit, "%s is given in %s", c.ID, note.Quote(v.Unit))
		return food.Value{}, nil, 0, false
	}
	factor *= per100g
	value = food.Value{
		Constituent: c.ID, Amount: v.Number * factor, SD: food.None, Low: food.None, High: food.None, Limit: food.None,
		State: estimate.Calculated, Source: food.Own, Ref: o.Code,
	}
	switch {
	case v.State != "":
		value.Amount = food.None
		value.State, _ = estimate.ParseState(v.State)
		if v.State == drink.Below {
			value.Limit = v.Limit * factor
		}
	case v.Half > 0:
		value.SD = amount.HalfSD(&v.Quantity) * factor
	}
	return value, c, factor, true
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
