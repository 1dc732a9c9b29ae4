package prep

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// write changes the pot: each row loses its sugars and gets its part of the
// products. The water that disaccharides take up is the whole pot's.
func (m *fermenting) write() {
	pot := m.pot
	fed := make([][]float64, len(pot.Rows)) // hexose and acids that each row gives
	all, uptake := make([]float64, pot.N), make([]float64, pot.N)
	for row := range pot.Rows {
		fed[row] = make([]float64, pot.N)
		take := func(col int, share []float64, water float64) {
			if !pot.Has(row, col) {
				return
			}
			cell := pot.Write(row, col)
			for d, x := range cell {
				gone := x * share[d]
				cell[d] -= gone
				fed[row][d] += gone * (1 + water)
				all[d] += gone * (1 + water)
				uptake[d] += gone * water
			}
		}
		for _, s := range m.sugars {
			take(s.col, s.share, s.water)
		}
		for _, p := range m.made {
			take(p.col, p.share, 0)
		}
	}
	m.drink(uptake)
	rest, water := pot.Columns.At(constituent.MassOther), pot.Columns.At(constituent.Water)
	for row := range pot.Rows {
		for d, x := range fed[row] {
			if all[d] <= 0 {
				continue
			}
			part := x / all[d]
			left := all[d]
			for _, p := range m.made {
				pot.Write(row, p.col)[d] += part * p.made[d]
				pot.Write(row, water)[d] += part * p.made[d] * p.water
				left -= p.hexose * p.made[d]
			}
			if left > dust*all[d] {
				pot.Write(row, rest)[d] += part * left
			}
		}
		ledger.Change(pot, row)
	}
}

// dust is what arithmetic leaves of what ferments, as a share of it: it is nothing.
const dust = 1e-12

// drink takes the water that disaccharides take up out of the pot.
func (m *fermenting) drink(uptake []float64) {
	water := m.pot.Total(constituent.Water)
	col := m.pot.Columns.At(constituent.Water)
	for row := range m.pot.Rows {
		if !m.pot.Has(row, col) {
			continue
		}
		cell := m.pot.Write(row, col)
		for d := range cell {
			if water[d] > 0 {
				cell[d] *= max(1-uptake[d]/water[d], 0)
			}
		}
	}
}

// knowWhatIsStated drops the bounds of what is now known, shrinks those of the
// sugars by what ferments, and makes unknown what is stated so.
func (m *fermenting) knowWhatIsStated(after []Afterwards) {
	for row := range m.pot.Rows {
		bounds := m.pot.Bounds(row)
		for _, s := range m.sugars {
			bounds[constituent.Must(s.id).Order] *= 1 - s.share[0]
		}
		for _, a := range after {
			order := constituent.Must(a.ID).Order
			bounds[order] = 0
			if a.Per100g == nil {
				bounds[order] = math.NaN()
			}
		}
	}
}
