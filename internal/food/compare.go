package food

import (
	"math"

	"sipsum/internal/constituent"
)

// Comparison is one constituent of several foods side by side.
type Comparison struct {
	Constituent *constituent.Constituent
	Cells       []Compared // one for each food, in their order
	Disagree    bool       // two values differ by more than their spreads explain
	Copied      bool       // all stated values are one figure, that of one row: there is no difference to know
}

// Compared is what one food says.
type Compared struct {
	Value  Value
	Stated bool // the table has a row
	SD     float64
	Class  bool   // SD is the class default
	By     string // Borrowed: nobody measured this food's own; else empty
}

// apart is how many standard deviations of the difference two values must lie
// apart to be called in disagreement.
const apart = 3

// Compare sets foods side by side, constituent by constituent in vocabulary
// order; constituents that no food has are left out. Two values a and b disagree
// where
//
//	|a − b| > 3 · √(sd(a)² + sd(b)²)
//
// with the spread that the ledger would take (package doc, 5).
func Compare(foods []*Food) []Comparison {
	var list []Comparison
	for _, c := range constituent.All() {
		line := Comparison{Constituent: c, Cells: make([]Compared, len(foods))}
		any := false
		for i, f := range foods {
			v, ok := f.Value(c.ID)
			if !ok {
				continue
			}
			any = true
			line.Cells[i] = Compared{Value: v, Stated: true, By: ByOf(f.ID, v)}
			if Stated(v.Amount) {
				line.Cells[i].SD, line.Cells[i].Class = spreadOf(f, c, v)
				if v.By == ByKin {
					line.Cells[i].SD, line.Cells[i].Class = v.SD, false
				}
			}
		}
		if any {
			line.Disagree, line.Copied = disagree(line.Cells), copied(foods, line.Cells)
			list = append(list, line)
		}
	}
	return list
}

// copied reports whether two foods or more state one figure, since they have it of one row:
// that of their lender, or of the agency's table.
func copied(foods []*Food, cells []Compared) bool {
	row, amount, n := "", 0.0, 0
	for i, c := range cells {
		switch {
		case !c.Stated || !Stated(c.Value.Amount):
			continue
		case n > 0 && (rowOf(foods[i], c.Value) != row || c.Value.Amount != amount):
			return false
		}
		row, amount, n = rowOf(foods[i], c.Value), c.Value.Amount, n+1
	}
	return n > 1
}

func disagree(cells []Compared) bool {
	for i, a := range cells {
		for _, b := range cells[i+1:] {
			if !a.Stated || !b.Stated || !Stated(a.Value.Amount) || !Stated(b.Value.Amount) {
				continue
			}
			if math.Abs(a.Value.Amount-b.Value.Amount) > apart*math.Hypot(a.SD, b.SD) {
				return true
			}
		}
	}
	return false
}
