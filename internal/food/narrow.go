package food

import (
	"math"

	"sipsum/internal/constituent"
)

// narrow takes the class default of a carbohydrate that is far wider than all that stands
// beside it down to that: it is what the others leave of 100 g, however much such values
// vary from food to food. A syrup of a third water has two thirds of sugar. A rest keeps
// its class default: it is all that nobody looked for.
func (e *entry) narrow() {
	if !e.weighed() || e.Food.Chemical {
		return
	}
	const thrice = 3 // our own bound: closer than that, who knows better is open
	_, all := e.sum(constituent.Must(constituent.Mass))
	for _, leaf := range constituent.Sums().Leaves(constituent.Carbohydrate) {
		cell := e.cell(leaf)
		if beside := math.Sqrt(all - cell.variance()); leaf.Kind == constituent.Leaf && beside > 0 && (cell.Class && cell.SD > thrice*beside || cell.Tail > 0 && cell.SD > beside) {
			cell.SD = beside
		}
	}
	for i, t := range e.Totals {
		_, parts := e.sum(t.Constituent)
		if beside := math.Sqrt(max(all-parts, 0)); t.Cell.Tail > 0 && below(t.Constituent, constituent.Carbohydrate) && beside > 0 && t.Cell.SD > beside {
			e.Totals[i].Cell.SD = beside
		}
	}
}
