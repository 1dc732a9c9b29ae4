package reading

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// scales closes the mass of a pot on what was read of it.
type scales struct {
	target []float64 // ln of grams
	cells  []cell
	weight []float64    // by cell: its part of what is missing
	within [][2]float64 // by cell: its range, in grams
}

// newScales gives nil if no mass was read.
func (k *kept) newScales(pot *ledger.Pot, target []float64) *scales {
	if target == nil {
		return nil
	}
	s, sum := &scales{target: target}, 0.0
	for row := range pot.Rows {
		for _, col := range pot.Columns.Below(constituent.Mass) {
			was := k.cells[row][col]
			if was == nil {
				continue
			}
			low, high := rangeOf(was)
			s.cells, s.within = append(s.cells, cell{row, col}), append(s.within, [2]float64{low, high})
			s.weight = append(s.weight, estimate.Variance(was))
			sum += estimate.Variance(was)
		}
	}
	for i := range s.weight {
		if sum > 0 {
			s.weight[i] /= sum
		}
	}
	return s
}

// share gives what is missing to the entries: what an update leaves of the mass is the
// curvature of the model, and what a sample of draws shows by chance. The least certain
// moves most, within its range, so that what is certain stays.
func (s *scales) share(pot *ledger.Pot) {
	if s == nil {
		return
	}
	missing := pot.Mass()
	for d, mass := range missing {
		missing[d] = math.Exp(s.target[d]) - mass
	}
	for i, c := range s.cells {
		if s.weight[i] == 0 {
			continue
		}
		column := pot.Write(c.row, c.col)
		for d, is := range column {
			column[d] = min(max(is+s.weight[i]*missing[d], min(s.within[i][0], is)), max(s.within[i][1], is))
		}
	}
}

// close makes the pot weigh what was read by a share of all.
func (s *scales) close(pot *ledger.Pot) {
	mass := pot.Mass()
	for _, c := range s.cells {
		column := pot.Write(c.row, c.col)
		for d := range column {
			if mass[d] > 0 {
				column[d] *= math.Exp(s.target[d]) / mass[d]
			}
		}
	}
}
