package titration

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// beyond is the share of the draws on either side that is beyond the range of an amount.
const beyond = 0.005

// keepRange keeps an acid within the middle 99 % of its own draws before the curve (the rule of
// package reading); a draw that was beyond may stay there.
func keepRange(was, is []float64) {
	draws := slices.Clone(was[1:])
	last := float64(len(draws) - 1)
	low := min(estimate.Smallest(draws, int(math.Ceil(beyond*last))), was[0])
	high := max(estimate.Smallest(draws, int(math.Floor((1-beyond)*last))), was[0])
	for d, x := range is {
		is[d] = min(max(x, min(low, was[d])), max(high, was[d]))
	}
}

// move makes an acid of a pot what it is over what it was. What of it is in the tables moves, each
// row by its part in the spread of their sum (which is the least squares of rows that have nothing
// to do with each other), and water makes room; what nobody has measured stays unknown, with the
// most that the curve leaves of it.
func move(pot *ledger.Pot, a acid.Acid, was, is []float64) {
	factor := make([]float64, len(was))
	for d := range factor {
		factor[d] = is[d] / was[d]
	}
	named := pot.Total(a.Constituent)
	var cells [][]float64
	for row := range pot.Rows {
		for _, col := range pot.Columns.Below(a.Constituent) {
			if pot.Has(row, col) {
				cells = append(cells, pot.Write(row, col))
			}
		}
	}
	parts := partsOf(cells, named)
	added := make([]float64, len(named))
	for d, all := range named {
		want, sum := factor[d]*all, 0.0
		for i, cell := range cells {
			cell[d] = max(cell[d]+parts[i]*(want-all), 0)
			sum += cell[d]
		}
		for _, cell := range cells {
			if sum > 0 {
				cell[d] *= want / sum
			}
		}
		added[d] = want - all
	}
	if acidity.IsOrganic(a) {
		takeWater(pot, added)
	}
	for row := range pot.Rows {
		// a curve lowers a bound and never raises it
		if bound := pot.Bounds(row); bound[constituent.Must(a.Constituent).Order] > 0 {
			bound[constituent.Must(a.Constituent).Order] *= min(1, highOver(was, is))
		}
	}
}

// highOver is how much of the upper end of an amount is left.
func highOver(was, is []float64) float64 {
	return estimate.Summarise(is).High / estimate.Summarise(was).High
}

// partsOf gives the part of each cell in the variance of their sum; of a sum without a spread, in
// the sum.
func partsOf(cells [][]float64, sum []float64) []float64 {
	parts := make([]float64, len(cells))
	variance, all := stat.Variance(sum[1:], nil), 0.0
	for i, cell := range cells {
		if variance > 0 {
			parts[i] = max(stat.Covariance(cell[1:], sum[1:], nil), 0)
		} else {
			parts[i] = cell[0]
		}
		all += parts[i]
	}
	for i := range parts {
		if all > 0 {
			parts[i] /= all
		}
	}
	return parts
}

// takeWater takes grams of a pot's water, from each row by what it has, so that the mass stays.
func takeWater(pot *ledger.Pot, grams []float64) {
	water := pot.Total(constituent.Water)
	for row := range pot.Rows {
		for _, col := range pot.Columns.Below(constituent.Water) {
			if !pot.Has(row, col) {
				continue
			}
			cell := pot.Write(row, col)
			for d := range cell {
				if water[d] > 0 {
					cell[d] *= max(1-grams[d]/water[d], 0)
				}
			}
		}
	}
}
