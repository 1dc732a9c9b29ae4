package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// PureWater is the water of melted ice and of dilution to a mass: by formula,
// without minerals.
func PureWater() *food.Food {
	return &food.Food{
		ID:       food.ID{Table: "core", Code: "water-pure"},
		Names:    []food.Name{{Language: "en", Text: "Water, pure"}},
		Group:    "water",
		Chemical: true,
		Density:  food.Density{GramsPerMl: food.None, SD: food.None},
		Edible:   food.None,
		Values: []food.Value{{
			Constituent: constituent.Water, Amount: 100, SD: 0, Low: food.None, High: food.None, Limit: food.None,
			State: estimate.Calculated, Source: "formula", Ref: "H2O",
		}},
		Marks: []food.Mark{{Kind: "allergen", Source: "water by formula"}},
	}
}

// Water adds grams (a column) of a water to the pot, under the step's path.
func Water(pot *ledger.Pot, water *food.Profile, perGram ledger.Cells, grams []float64, path string) Outcome {
	pot.Pour(water, perGram, grams, path)
	return Outcome{Added: grams[0]}
}

// UpTo gives the column of water that brings the pot to a mass. It is an error
// if the pot already weighs more.
func UpTo(pot *ledger.Pot, to []float64) ([]float64, error) {
	mass := pot.Mass()
	// guard: water only adds
	if mass[0] > to[0] {
		return nil, unlike("dilute to %s g: the pot already weighs %s g", to[0], mass[0])
	}
	grams := make([]float64, pot.N)
	for d := range grams {
		grams[d] = max(to[d]-mass[d], 0)
	}
	return grams, nil
}
