package reading

import (
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/untold"
)

// moveAlcohol lets alcohol be there that the recipe takes to have boiled off, or have gone that
// has been hot, where a strength was read beyond what the recipe explains: how much a vessel sends
// back or lets go nobody has calculated, and the instrument reads it. What is left is said as of
// any reading.
func (b *Bench) moveAlcohol(pot *ledger.Pot, u *update, weighed bool) (grams float64) {
	j := slices.IndexFunc(u.readings, func(r reading) bool { return r.kind == amount.ReadABV })
	if j < 0 || u.off[j] == u.kappa[j] {
		return 0
	}
	alcohol := untold.AlcoholOf(pot, weighed, u.off[j] > u.kappa[j])
	if alcohol == nil {
		return 0
	}
	left, grams := alcohol.Solve(func() []float64 {
		col := b.Expected(pot, amount.ReadABV)
		estimate.Logs(col)
		return col
	}, b.wanted(pot, u, j))
	u.kappa[j] = u.off[j] - left
	return grams
}
