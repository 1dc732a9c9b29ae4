package assay

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// volume gives the volume of a pot in ml: each constituent's specific volume is
// drawn once for the whole run.
func (w *walk) volume(pot *ledger.Pot) []float64 {
	sum := make([]float64, pot.N)
	for _, col := range pot.Columns.Below(constituent.Mass) {
		c := pot.Columns.List[col]
		v, of := solution.VolumeOf(c.ID)
		each := make([]float64, pot.N)
		estimate.Input{
			Central: v.MlPerGram, Shape: estimate.Normal, SD: v.SD, High: math.Inf(1),
			Stream: estimate.KeyOf(w.amounts.seed, "constant", "specific volume", string(of)),
		}.Fill(each)
		for row := range pot.Rows {
			for d, g := range pot.Cell(row, col) {
				sum[d] += g * each[d]
			}
		}
	}
	return sum
}
