package reading

import (
	"math"
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// moveAlcohol lets alcohol be there that the recipe takes to have boiled off, or have gone that
// has been hot, where a strength was read beyond what the recipe explains: how much a vessel sends
// back or lets go nobody has calculated, and the instrument reads it. No more than had gone comes
// back, no more than was hot goes; in a pot that has been weighed it changes places with water.
// What is left is said as of any reading.
func (b *Bench) moveAlcohol(pot *ledger.Pot, u *update, weighed bool) (grams float64) {
	j := slices.IndexFunc(u.readings, func(r reading) bool { return r.kind == amount.ReadABV })
	if j < 0 || u.off[j] == u.kappa[j] {
		return 0
	}
	still := newStill(pot, weighed, u.off[j] > u.kappa[j])
	if still == nil {
		return 0
	}
	want := b.wanted(pot, u, j)
	low, high, share := make([]float64, pot.N), estimate.Constant(pot.N, 1), make([]float64, pot.N)
	read := func() []float64 {
		still.set(share)
		col := b.Expected(pot, amount.ReadABV)
		estimate.Logs(col)
		return col
	}
	const halvings = 45
	for range halvings {
		for d := range share {
			share[d] = (low[d] + high[d]) / 2
		}
		for d, is := range read() {
			if (is < want[d]) == (still.sign > 0) {
				low[d] = share[d]
			} else {
				high[d] = share[d]
			}
		}
	}
	left := want[0] - read()[0]
	const met = 1e-6 // of a reading, in logarithms: numerical
	if math.Abs(left) < met {
		left = 0
	}
	u.kappa[j] = u.off[j] - left
	return still.back(share)
}

// still is the alcohol of a pot and what has gone of it, to be brought back by a share; or what may
// go, to be taken away.
type still struct {
	sign                 float64 // 1: alcohol comes back; −1: it goes
	of                   ledger.Tracer
	pot                  *ledger.Pot
	alcoholCol, waterCol int
	gone, alcohol, water [][]float64 // by row, as it was; gone is nil where none has
}

// newStill gives nil if no alcohol has gone, or may.
func newStill(pot *ledger.Pot, weighed, back bool) *still {
	sign, of := -1.0, ledger.Tracer(ledger.AlcoholHot{})
	if back {
		sign, of = 1, ledger.AlcoholGone{}
	}
	s, any := &still{sign: sign, of: of, pot: pot, alcoholCol: pot.Columns.At(constituent.Alcohol), waterCol: -1}, false
	if weighed {
		s.waterCol = pot.Columns.At(constituent.Water)
	}
	for row := range pot.Rows {
		var gone, water []float64
		for _, t := range pot.Traced(row) {
			if t.Tracer == of {
				gone, any = slices.Clone(t.Column), true
			}
		}
		if s.waterCol >= 0 {
			water = slices.Clone(pot.Cell(row, s.waterCol))
		}
		s.gone, s.water, s.alcohol = append(s.gone, gone), append(s.water, water), append(s.alcohol, slices.Clone(pot.Cell(row, s.alcoholCol)))
	}
	if !any {
		return nil
	}
	return s
}

// set brings back a share of what has gone, or takes away of what may go, draw by draw.
func (s *still) set(share []float64) {
	for row, gone := range s.gone {
		if gone == nil {
			continue
		}
		alcohol := s.pot.Write(row, s.alcoholCol)
		for d, x := range gone {
			alcohol[d] = max(s.alcohol[row][d]+s.sign*share[d]*x, 0)
		}
		if s.waterCol < 0 {
			continue
		}
		water := s.pot.Write(row, s.waterCol)
		for d, x := range gone {
			water[d] = max(s.water[row][d]-s.sign*share[d]*x, 0)
		}
	}
}

// back takes what has come back off what has gone, and gives it in grams at central values;
// below zero what has gone.
func (s *still) back(share []float64) (grams float64) {
	s.set(share)
	for row, gone := range s.gone {
		if gone == nil {
			continue
		}
		grams += s.sign * share[0] * gone[0]
		left := s.pot.Carry(row, s.of)
		for d, x := range gone {
			left[d] = x * (1 - share[d])
		}
	}
	return grams
}
