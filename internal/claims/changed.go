package claims

import (
	"slices"
	"strconv"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// changed gives a drink with levers set: a food of a table with other figures becomes an own food
// that borrows all else from it, and lines pour that. It tells which food each stands for.
func changed(d *drink.Drink, list []lever, at []float64) (*drink.Drink, map[food.ID]food.ID) {
	out := *d
	out.Foods, out.Build, out.Components = slices.Clone(d.Foods), slices.Clone(d.Build), slices.Clone(d.Components)
	for i := range out.Components {
		out.Components[i].Ingredients = slices.Clone(d.Components[i].Ingredients)
	}
	out.Claims, out.Targets = nil, nil
	stand := map[food.ID]food.ID{}
	for i, l := range list {
		if l.food == nil {
			everyLine(&out, func(line *drink.Line) {
				if line.Path == l.line.Path {
					line.Amount.Number, line.Amount.Half = at[i], 0
				}
			})
			continue
		}
		number, _ := strconv.ParseFloat(strconv.FormatFloat(at[i], 'g', 12, 64), 64)
		if l.food.ID.Table == food.Own {
			restate(&out, l, number)
			continue
		}
		code := slug(l.food)
		own := food.ID{Table: food.Own, Code: code}
		if _, have := stand[own]; !have {
			stand[own] = l.food.ID
			out.Foods = append(out.Foods, standIn(code, l.food))
			everyLine(&out, func(line *drink.Line) {
				if names(line.Food, l.food) {
					line.Food = own.String()
				}
			})
		}
		f := &out.Foods[slices.IndexFunc(out.Foods, func(o drink.OwnFood) bool { return o.Code == code })]
		f.Values = append(f.Values, drink.Stated{Tag: l.tag, Quantity: drink.Quantity{Number: number, Exact: true, Unit: l.unit}})
	}
	return &out, stand
}

// restate gives an own food another figure, given per 100 g, in the place of the one that it states.
func restate(d *drink.Drink, l lever, per100g float64) {
	i := slices.IndexFunc(d.Foods, func(o drink.OwnFood) bool { return o.Code == l.food.ID.Code })
	o := &d.Foods[i]
	grams := o.Per.Base()
	if o.Per.Measure.Kind == unit.Volume && o.Density != nil {
		grams *= o.Density.Number
	}
	o.Values = slices.DeleteFunc(slices.Clone(o.Values), func(v drink.Stated) bool {
		return slices.ContainsFunc(constituent.Said(v.Tag), func(c *constituent.Constituent) bool { return string(c.ID) == l.tag })
	})
	o.Values = append(o.Values, drink.Stated{Tag: l.tag, Quantity: drink.Quantity{Number: per100g * grams / unit.Hundred, Exact: true, Unit: l.unit}})
}

// standIn is an own food that borrows all from another.
func standIn(code string, f *food.Food) drink.OwnFood {
	gram, _ := unit.FindMeasure("g")
	own := drink.OwnFood{
		Code: code, Name: f.Name(), Group: f.Group, Fill: f.ID.String(),
		Per: unit.Amount{Number: unit.Hundred, Measure: gram}, Source: "the nearest world in which the claim is false",
	}
	if food.Stated(f.Density.GramsPerMl) {
		own.Density = &drink.Quantity{Number: f.Density.GramsPerMl, Unit: "g/ml"}
	}
	return own
}

func everyLine(d *drink.Drink, do func(*drink.Line)) {
	for i := range d.Build {
		do(&d.Build[i])
	}
	for i := range d.Components {
		for k := range d.Components[i].Ingredients {
			do(&d.Components[i].Ingredients[k])
		}
	}
}

// names tells whether the text of a line names a food.
func names(text string, f *food.Food) bool {
	if id, coded := food.ParseID(text); coded {
		return id == f.ID
	}
	return text == f.Name()
}
