package sheet

import (
	"slices"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/caution"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/label"
	"sipsum/internal/recipe"
	"sipsum/internal/solution"
)

// Declaration is what must be said of allergens, and what may hurt, under one
// set of rules.
type Declaration struct {
	allergen.Declaration
	Cautions []caution.Caution
}

// declare works out allergens and cautions under one set of rules.
func declare(rules string, a *assay.Assay, facts label.Facts, items []allergen.Item) (Declaration, error) {
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

// itemsOf gives the foods of a drink as far as allergens and cautions go.
func itemsOf(a *assay.Assay) []allergen.Item {
	items := make([]allergen.Item, len(a.Items))
	for i, it := range a.Items {
		items[i] = itemOf(it)
	}
	return items
}

func itemOf(it recipe.Item) allergen.Item {
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

// NotAssessed reports whether a food of the drink has allergens that nobody has
// looked for: somebody has to decide.
func (s *Sheet) NotAssessed() bool {
	for _, d := range s.Allergens() {
		for _, c := range d.Check {
			if c.Code == allergen.CheckNotAssessed {
				return true
			}
		}
	}
	return false
}
