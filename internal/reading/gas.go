package reading

import (
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// keepGas works on a pot whose carbon dioxide is stated in g/l: it stays as stated, since
// none of the instruments reads gas. What it takes or leaves of the mass is water.
func (b *Bench) keepGas(pot *ledger.Pot, work func()) {
	held, volume := pot.Total(constituent.CarbonDioxide), b.gauge.Volume(pot)
	work()
	now, after := pot.Total(constituent.CarbonDioxide), b.gauge.Volume(pot)
	water, more := pot.Total(constituent.Water), make([]float64, pot.N)
	for _, col := range pot.Columns.Below(constituent.CarbonDioxide) {
		for row := range pot.Rows {
			if !pot.Has(row, col) {
				continue
			}
			for d, cell := 0, pot.Write(row, col); d < pot.N; d++ {
				if now[d] <= 0 || volume[d] <= 0 {
					continue
				}
				was := cell[d]
				cell[d] *= held[d] / volume[d] * after[d] / now[d]
				more[d] += cell[d] - was
			}
		}
	}
	openTap(pot).set(func(d int) float64 {
		if water[d] <= 0 {
			return 1
		}
		return 1 - more[d]/water[d]
	})
}
