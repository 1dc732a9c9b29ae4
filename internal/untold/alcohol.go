package untold

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// Alcohol is the alcohol of a pot and what has gone of it, to be brought back by a share; or what may
// go, to be taken away.
type Alcohol struct {
	sign                 float64 // 1: alcohol comes back; −1: it goes
	of                   ledger.Tracer
	pot                  *ledger.Pot
	alcoholCol, waterCol int
	gone, alcohol, water [][]float64 // by row, as it was; gone is nil where none has
}

// AlcoholOf gives the alcohol that a reading may bring back, or take away; if none has gone, or may.
func AlcoholOf(pot *ledger.Pot, weighed, back bool) *Alcohol {
	sign, of := -1.0, ledger.Tracer(ledger.AlcoholHot{})
	if back {
		sign, of = 1, ledger.AlcoholGone{}
	}
	s, any := &Alcohol{sign: sign, of: of, pot: pot, alcoholCol: pot.Columns.At(constituent.Alcohol), waterCol: -1}, false
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
func (s *Alcohol) set(share []float64) {
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

// Solve finds the share with which a pot reads what is wanted, in logarithms and draw by draw, as far
// as one does, and gives what is left of it at central values, and the grams of alcohol that came
// back; below zero, that went.
func (s *Alcohol) Solve(read func() []float64, want []float64) (left, grams float64) {
	const halvings, met = 45, 1e-6
	low, high, share := make([]float64, s.pot.N), estimate.Constant(s.pot.N, 1), make([]float64, s.pot.N)
	for range halvings {
		for d := range share {
			share[d] = (low[d] + high[d]) / 2
		}
		s.set(share)
		for d, is := range read() {
			if (is < want[d]) == (s.sign > 0) {
				low[d] = share[d]
			} else {
				high[d] = share[d]
			}
		}
	}
	if left = want[0] - read()[0]; math.Abs(left) < met {
		left = 0
	}
	return left, s.settle(share)
}

// settle takes what has come back off what has gone, and gives it in grams at central values.
func (s *Alcohol) settle(share []float64) (grams float64) {
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
