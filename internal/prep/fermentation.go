package prep

import (
	"sync"

	"sipsum/internal/constituent"
)

// product is a row of data/fermentation.csv as grams per gram of product.
type product struct {
	hexose float64 // of glucose that it takes
	water  float64 // given off
	gas    float64 // given off, less what is taken from the air
}

// products are those with an equation; any other takes its own weight of sugar.
var products = sync.OnceValue(func() map[constituent.ID]product {
	const file = "fermentation.csv"
	oxygen, err := constituent.MolarMass("O2")
	if err != nil {
		panic("prep: " + err.Error())
	}
	table := map[constituent.ID]product{}
	for _, row := range tableRows(file)[1:] {
		id := constituent.ID(row[0])
		per := func(cell string, molar float64) float64 { return mustNumber(file, cell) * molar / molarMass(id) }
		table[id] = product{
			hexose: per(row[1], molarMass(constituent.Glucose)),
			water:  per(row[4], molarMass(constituent.Water)),
			gas:    per(row[3], molarMass(constituent.CarbonDioxide)) - per(row[2], oxygen),
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
