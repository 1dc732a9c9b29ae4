package prep

import (
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
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
