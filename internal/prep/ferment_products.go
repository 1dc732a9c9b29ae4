package prep

import (
	"maps"
	"slices"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// product is a row of data/fermentation.csv as grams per gram of product.
type product struct {
	hexose float64 // of glucose that it takes
	water  float64 // given off
	gas    float64 // given off, less what is taken from the air
}

// products are those with an equation; any other takes its own weight of sugar.
var products = sync.OnceValue(func() map[constituent.ID]product {
	oxygen, err := constituent.MolarMass("O2")
	if err != nil {
		panic("prep: " + err.Error())
	}
	table := map[constituent.ID]product{}
	for _, row := range embedded.Rows("fermentation.csv") {
		id := constituent.ID(row.Text("product"))
		per := func(column string, molar float64) float64 { return row.Number(column) * molar / molarMass(id) }
		table[id] = product{
			hexose: per("sugar", molarMass(constituent.Glucose)),
			water:  per("water", molarMass(constituent.Water)),
			gas:    per("carbon_dioxide", molarMass(constituent.CarbonDioxide)) - per("oxygen", oxygen),
		}
	}
	return table
})

// productOf gives the equation of a constituent.
func productOf(id constituent.ID) product {
	if p, ok := products()[id]; ok {
		return p
	}
	return product{hexose: 1}
}

// FermentProducts is what a ferment makes and nobody states, a food like any other. It
// weighs nothing: its mass stands, without a name, where the sugar was.
func FermentProducts() *food.Food {
	return &food.Food{
		ID:       food.ID{Code: "what the ferment made"},
		Names:    []food.Name{{Language: "en", Text: "What a ferment made"}},
		Group:    "acid",
		Chemical: true,
		Density:  food.Density{GramsPerMl: food.None, SD: food.None},
		Edible:   food.None,
		Marks:    []food.Mark{{Kind: "allergen", Source: "made of sugar by a ferment"}},
	}
}

// Unnamed is FermentProducts, entered and drawn, and the path of the step.
type Unnamed struct {
	Products *food.Profile
	PerGram  ledger.Cells
	Path     string
}

// bound makes unknown what grams of hexose may have become beside what is stated.
func (u Unnamed) bound(pot *ledger.Pot, after []Afterwards, hexose float64) {
	stated := func(id constituent.ID) bool {
		return slices.ContainsFunc(after, func(a Afterwards) bool { return a.ID == id })
	}
	acidStated := slices.ContainsFunc(after, func(a Afterwards) bool { return isAcid(a.ID) })
	pot.Pour(u.Products, u.PerGram, make([]float64, pot.N), u.Path)
	bounds := pot.Bounds(len(pot.Rows) - 1)
	for _, id := range slices.Sorted(maps.Keys(products())) {
		if stated(id) || isAcid(id) && acidStated {
			continue
		}
		most := hexose / products()[id].hexose
		bounds[constituent.Must(id).Order] = most
		for up := constituent.Must(id).Parent; up != constituent.Mass; up = constituent.Must(up).Parent {
			total := constituent.Must(up).Order
			bounds[total] = max(bounds[total], most)
		}
	}
}

func isAcid(id constituent.ID) bool { return constituent.Must(id).Parent == constituent.OrganicAcids }
