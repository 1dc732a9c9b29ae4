package prep

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
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

func (a at) dilute(s *drink.Dilute) (Outcome, error) {
	to, err := a.diluteTo(s)
	if err != nil {
		return Outcome{}, err
	}
	grams, err := UpTo(a.pot, to)
	if err != nil {
		return Outcome{}, err
	}
	return a.water(grams), nil
}

// diluteTo gives the mass to dilute to: stated, or that at which the pot reads
// the stated °Brix, since water reads none; what alcohol reads changes as it is thinned, so that
// the mass is found by repetition. Water brings no reading up, and none to nothing.
func (a at) diluteTo(s *drink.Dilute) ([]float64, error) {
	if s.To != nil {
		return a.amount(s.To, "to"), nil
	}
	read, mass, to := a.share(s.Brix, "brix"), a.pot.Mass(), a.Refracted(a.pot)
	// guard: no water reads nothing away
	if slices.Min(read) <= 0 || s.Brix.Number <= s.Brix.Half {
		return nil, impossible("dilute to 0 °Bx: no water is enough for that, give the reading that it shall have")
	}
	if to[0] < read[0]*mass[0] || mass[0] <= 0 {
		there := 0.0
		if mass[0] > 0 {
			there = unit.Hundred * to[0] / mass[0]
		}
		return nil, impossible("dilute to %.4g °Bx: the pot reads only %.4g °Bx, and water brings it further down", s.Brix.Number, there)
	}
	const repetitions = 20 // the last changes nothing that a scale shows
	water, alcohol := a.pot.Total(constituent.Water), a.pot.Total(constituent.Alcohol)
	for d, reads := range to {
		now := solution.RefractionExcess(water[d], alcohol[d])
		to[d] = reads / read[d]
		for range repetitions {
			to[d] = (reads - now + solution.RefractionExcess(water[d]+max(to[d]-mass[d], 0), alcohol[d])) / read[d]
		}
	}
	return to, nil
}
