package ledger

import (
	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// yield makes the draws of a food in hand add up to one gram: what is of no known kind gives
// way first, then what nobody stated and what is stated, each by its variance. What is exact
// stays, unless nothing is left that may give way: then close scales all.
func (d *Drawer) yield(y food.Yield, cells Cells) {
	other := -1
	if y.Other {
		other = d.columns.At(constituent.MassOther)
	}
	soft := make([]bool, len(cells))
	mass := d.columns.mass()
	for _, at := range mass {
		of := d.columns.List[at].Order
		soft[at] = at != other && (y.Unsaid[of] || y.Said[of] > 0)
	}
	for i := range d.ens.N {
		sum, firm, unsaid, variance := 0.0, 0.0, 0.0, 0.0
		for _, at := range mass {
			if cells[at] == nil {
				continue
			}
			x := cells[at][i]
			if sum += x; !soft[at] && at != other {
				firm += x
			}
			if of := d.columns.List[at].Order; soft[at] && y.Unsaid[of] {
				unsaid += x
			} else if soft[at] {
				variance += y.Said[of]
			}
		}
		need := 1 - sum
		if other >= 0 && cells[other] != nil {
			x := cells[other][i]
			cells[other][i] = max(x+need, 0)
			need -= cells[other][i] - x
		}
		if unsaid > 0 {
			variance += y.Between
		}
		if need == 0 || variance == 0 {
			continue
		}
		left := 0.0
		for _, at := range mass {
			if !soft[at] || cells[at] == nil {
				continue
			}
			x := &cells[at][i]
			if of := d.columns.List[at].Order; !y.Unsaid[of] {
				*x = max(*x+need*y.Said[of]/variance, 0)
			} else if unsaid > 0 {
				*x = max(*x+need*y.Between/variance**x/unsaid, 0)
			}
			left += *x
		}
		if left <= 0 || firm >= 1 {
			continue
		}
		for _, at := range mass { // nothing of a part is as far as it goes
			if soft[at] && cells[at] != nil {
				cells[at][i] *= (1 - firm - of(cells, other, i)) / left
			}
		}
	}
}

// of gives a draw of a column that a food may lack.
func of(cells Cells, at, draw int) float64 {
	if at < 0 || cells[at] == nil {
		return 0
	}
	return cells[at][draw]
}
