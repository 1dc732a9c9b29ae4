package batch

import (
	"sipsum/internal/drink"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
)

// Charge is gas that goes into closed bottles.
type Charge struct {
	Component string // "": the drink
	Bottle    unit.Amount
	Gas       unit.Amount
	Of        string          // the gas, by its name
	Left      *drink.Quantity // g/l that stays in the glass, as stated; nil if nobody has stated it
	Count     float64         // of bottles, each with a charge
	Glasses   float64         // that one serves
}

// charges are the bottles of some steps, each for so many glasses.
func charges(component string, steps []drink.Step, glasses float64) []Charge {
	var list []Charge
	for _, step := range steps {
		switch c := step.(type) {
		case *drink.Carbonate:
			if c.Bottle != nil {
				list = append(list, Charge{Component: component, Bottle: *c.Bottle, Gas: *c.Charge, Of: solution.CarbonDioxide.Name(), Left: c.Left, Glasses: glasses})
			}
		case *drink.Foam:
			if c.Bottle != nil {
				list = append(list, Charge{Component: component, Bottle: *c.Bottle, Gas: *c.Charge, Of: solution.Gas(c.Gas).Name(), Left: c.Left, Glasses: glasses})
			}
		}
	}
	return list
}
