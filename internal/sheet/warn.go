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

// warn works out the cautions under one set of rules.
func warn(rules string, a *assay.Assay, facts label.Facts, items []allergen.Item) []caution.Caution {
	alcohol := facts.Serving[constituent.Alcohol]
	abv := func(grams float64) float64 { return solution.ABV(grams, a.Volume.Mean) }
	return caution.For(caution.Input{
		Rules: rules, Name: a.Drink.Name, Items: items, Steps: a.Steps(),
		ServingG: a.Mass.Mean, ServingMl: a.Volume.Mean, Amounts: facts.Serving,
		ABV: abv(alcohol.Mean), ABVMost: abv(mostAlcohol(alcohol, a.Steps())),
	})
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
