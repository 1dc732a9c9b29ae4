package table

import (
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// CannotBe says what no food can have of a constituent, as a fault of the cell that prints
// it: more than 100 g in 100 g, more energy than fat, beyond the rounding of a table's last
// digit. It is empty if nothing is wrong. A release with such a cell is not loaded: a unit
// or a column has slipped, and of the rest nobody knows.
func CannotBe(v food.Value) string {
	what := food.Impossible(v, unit.LimitOf("rounding of a table", "share").High)
	if what == "" {
		return ""
	}
	return "makes " + what + ", and that cannot be"
}
