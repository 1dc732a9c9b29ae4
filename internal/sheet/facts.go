package sheet

import (
	"slices"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/caution"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/label"
	"sipsum/internal/solution"
)

// factsOf turns an assay into what cards and cautions are made of.
func factsOf(a *assay.Assay) label.Facts {
	f := label.Facts{ServingG: a.Mass.Mean, ServingMl: a.Volume.Mean, Serving: map[constituent.ID]estimate.Amount{}}
	for _, c := range constituent.All() {
		if c.PerGram == 0 || c.Kind == constituent.Figure {
			continue
		}
		x := estimate.Amount{}
		x.Mean, x.WithBounds, x.Known = a.AmountOf(c.ID)
		if r, ok := a.PerServing.Find(c.ID); ok && !r.Unknown {
			x.High, x.UpTo = r.High, r.UpTo
		}
		f.Serving[c.ID] = x
	}
	return f
}

// declare works out allergens and cautions under one set of rules.
func declare(rules string, a *assay.Assay, facts label.Facts) (Declaration, error) {
	items := make([]allergen.Item, len(a.Items))
	for i, it := range a.Items {
		items[i] = itemOf(it)
	}
	d, err := allergen.Declare(rules, items, texts(a.Drink.MayContain))
	if err != nil {
		return Declaration{}, err
	}
	alcohol := facts.Serving[constituent.Alcohol]
	abv := func(grams float64) float64 { return solution.ABV(grams, a.Volume.Mean) }
	return Declaration{
		Declaration: d,
		Cautions: caution.For(caution.Input{
			Rules: rules, Name: a.Drink.Name, Items: items, Steps: a.Steps(),
			ServingG: a.Mass.Mean, ServingMl: a.Volume.Mean, Amounts: facts.Serving,
			ABV: abv(alcohol.Mean), ABVMost: abv(mostAlcohol(alcohol, a.Steps())),
		}),
	}, nil
}

// mostAlcohol is the most alcohol that a serving can hold, in g. What nobody has stated of
// the alcohol of a food counts for nothing: tables leave it out of a lemon, and state it
// where there is some. What a ferment may have made counts.
func mostAlcohol(a estimate.Amount, steps []string) float64 {
	most := max(a.Mean, a.High)
	if end := max(a.WithBounds, a.UpTo); slices.Contains(steps, "ferment") && end > most {
		return end
	}
	return most
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
