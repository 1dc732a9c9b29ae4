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
}

// Compared is what one food says.
type Compared struct {
	Value  Value
	Stated bool // the table has a row
	SD     float64
	Class  bool // SD is the class default
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
			line.Cells[i] = Compared{Value: v, Stated: true}
			if Stated(v.Amount) {
				line.Cells[i].SD, line.Cells[i].Class = spreadOf(f, c, v)
				if v.By == ByKin {
					line.Cells[i].SD, line.Cells[i].Class = v.SD, false
				}
			}
		}
		if any {
			line.Disagree = disagree(line.Cells)
			list = append(list, line)
		}
	}
	return list
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
