package drink

import (
	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// adjustKind is the step whose dose is calculated.
var adjustKind = stepWith(StepEntry{
	"adjust", "bring it to a reading with a food, the dose is calculated: {ph: 3.2 | ta: 6 g/l | brix: 50, with: core:citric-acid}",
	"- adjust: {ph: 3.2, with: core:citric-acid}",
}, grammar[Adjust]{keys: []key[Adjust]{
	scaled("ph", "the pH to reach, as a meter reads it", phScale, func(s *Adjust) **Quantity { return &s.PH }),
	scaled("ta", "the titratable acidity to reach, as citric acid", acidity, func(s *Adjust) **Quantity { return &s.TA }),
	scaled("brix", "the reading to reach", brixScale, func(s *Adjust) **Quantity { return &s.Brix }),
	{"with", "the food or component that is added", true, textShape(mostName), (*reader).dosed},
}}, func(p present) (string, string) {
	if p.count("ph", "ta", "brix") != 1 {
		if p.count("ph", "ta", "brix") == 0 {
			return "needs one of ph, ta and brix", ""
		}
		return "has more than one of ph, ta and brix", "write one of them; adjust again for another"
	}
	return "", ""
})

// dosed reads the food whose dose is calculated, as a line of a gram of it.
func (r *reader) dosed(s *Adjust, n ast.Node) {
	food, ok := r.food(n)
	if !ok || !r.room(n) {
		return
	}
	if _, written, err := unit.ParseAmount(food); err == nil && written != "" {
		r.faults.Add(r.nodeAt(n), "write with: "+written, "with is a food without an amount: the dose is calculated")
		return
	}
	gram, _, _ := unit.ParseAmount("1 g")
	s.Ingredients = []Line{{Place: r.nodeAt(n), FoodAt: r.nodeAt(n), Path: occurrences{}.path(s.Path, food), Amount: gram, Food: food, Eaten: true}}
}
