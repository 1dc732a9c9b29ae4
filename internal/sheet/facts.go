package sheet

import (
	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/caution"
	"sipsum/internal/constituent"
	"sipsum/internal/label"
	"sipsum/internal/solution"
)

// factsOf turns an assay into what a card is made of.
func factsOf(a *assay.Assay) label.Facts {
	f := label.Facts{ServingG: a.Mass.Mean, ServingMl: a.Volume.Mean, Serving: map[constituent.ID]label.Amount{}}
	for _, c := range constituent.All() {
		if c.PerGram == 0 || c.Kind == constituent.Figure {
			continue
		}
		mean, withBounds, known := a.AmountOf(c.ID)
		f.Serving[c.ID] = label.Amount{Mean: mean, WithBounds: withBounds, Known: known}
	}
	return f
}

// declare works out allergens and cautions under one set of rules.
func declare(rules string, a *assay.Assay, facts label.Facts) (Declaration, error) {
	items := make([]allergen.Item, len(a.Items))
	for i, it := range a.Items {
		items[i] = itemOf(it)
	}
	d, err := allergen.Declare(rules, items, a.Drink.MayContain)
	if err != nil {
		return Declaration{}, err
	}
	amounts := map[constituent.ID]caution.Amount{}
	for id, x := range facts.Serving {
		amounts[id] = caution.Amount{Mean: x.Mean, WithBounds: x.WithBounds, Known: x.Known}
		if f, ok := a.PerServing.Find(id); ok && !f.Unknown {
			amounts[id] = caution.Amount{Mean: x.Mean, WithBounds: x.WithBounds, UpTo: f.UpTo, Known: x.Known}
		}
	}
	return Declaration{
		Declaration: d,
		Cautions: caution.For(caution.Input{
			Rules: rules, Name: a.Drink.Name, Items: items, Steps: a.Steps(),
			ServingG: a.Mass.Mean, ServingMl: a.Volume.Mean, Amounts: amounts,
			ABV: solution.ABV(amounts[constituent.Alcohol].Mean, a.Volume.Mean),
		}),
	}, nil
}

func itemOf(it assay.Item) allergen.Item {
	item := allergen.Item{
		Food: it.Food.ID, Name: it.Food.Name(), Group: it.Food.Group, PublisherGroup: it.Food.PublisherGroup,
		Chemical: it.Food.Chemical, Marks: it.Food.Marks, Stated: it.Stated, Own: it.Own, Path: it.Path, Eaten: it.Eaten,
	}
	for i, n := range it.Food.Names {
		if i > 0 {
			item.Names = append(item.Names, n.Text)
		}
	}
	return item
}
