package amount

import (
	"cmp"
	"strings"
	"sync"

	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
)

// rightShare is the share of the draws in which a recipe that is contradicted by a reading is
// wholly right, and likewise the reading.
var rightShare = sync.OnceValue(func() float64 {
	for _, row := range embedded.Rows("reading_limits.csv") {
		if row.Text("limit") == "wholly right" {
			return row.Number("value")
		}
	}
	panic("amount: reading_limits.csv has no row wholly right")
})

// Sides draws which is right of a pot, where recipe and reading contradict one another: −1 the
// recipe, 1 the reading, and between the two in the draws that are left. Of one pot it is the
// same whatever was read of it, so that an instrument is off each time or not at all.
func (h Hand) Sides(read *drink.Measured) []float64 {
	pot := cmp.Or(strings.Join(read.Of(), ", "), "the drink")
	end := 1 / (1 - 2*rightShare())
	col := h.Ens.Column(estimate.Input{Shape: estimate.Uniform, Low: -end, High: end, Stream: h.Ens.Stream("reading", "side", pot)})
	for d, x := range col {
		col[d] = min(max(x, -1), 1)
	}
	h.Ens.Journal.Write(estimate.Doubts, "whether the recipe or the reading of "+pot+" is right", col)
	return col
}
