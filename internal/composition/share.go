package composition

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// Unknowns are what the rows of a pot do not know, each at its most, draw by draw: by constituent
// of a list, and by row. Nil where a row knows all.
type Unknowns [][][]float64

// UnknownsOf works out those of a pot once for all its parts, rows side by side.
func UnknownsOf(pot *ledger.Pot, ids []*constituent.Constituent) Unknowns {
	all, sorts := make(Unknowns, len(ids)), make([]Sort, len(ids))
	for i, c := range ids {
		all[i], sorts[i] = make([][]float64, len(pot.Rows)), SortOf(pot, c)
	}
	_ = estimate.InBlocks(len(pot.Rows), func(from, to int) error {
		for row := from; row < to; row++ {
			for i := range ids {
				all[i][row] = sorts[i].most(row)
			}
		}
		return nil
	})
	return all
}

// ShareOut gives the figures of a part, with these totals, their shares of those of the
// whole, of which the part has some rows; unknown is that of the whole, in the order of the figures.
func (m *Meter) ShareOut(part Composition, own, of Totals, unknown Unknowns, has func(row int) bool) {
	for i, f := range part {
		part[i].Share = m.Share(own[f.Constituent.ID], of[f.Constituent.ID])
		part[i].Share.Least = part[i].Share.Low
		if !m.Brief {
			part[i].Share.Least = m.leastShare(own[f.Constituent.ID], of[f.Constituent.ID], unknown[i], has, part[i].Share.Low)
		}
	}
}

// leastShare is the low end of the share of a part with all that other rows do not know at its
// most: low where they know all.
func (m *Meter) leastShare(part, total []float64, unknown [][]float64, has func(row int) bool, low float64) float64 {
	if !(total[0] > 0) {
		return low
	}
	open := false
	for row, most := range unknown {
		switch {
		case most == nil || has(row):
		case math.IsNaN(most[0]):
			return math.NaN()
		default:
			open = true
		}
	}
	if !open {
		return low
	}
	full := slices.Clone(total)
	for row, most := range unknown {
		if !has(row) {
			add(full, most)
		}
	}
	return m.ratioOf(part, full, 1).Low
}

// Share gives part of total, draw by draw.
func (m *Meter) Share(part, total []float64) Share {
	if total[0] <= 0 {
		return noShare()
	}
	s := m.ratioOf(part, total, 1)
	return Share{Mean: s.Mean, Low: s.Low, High: s.High}
}

func noShare() Share { return Share{Mean: math.NaN(), Low: math.NaN(), High: math.NaN()} }
