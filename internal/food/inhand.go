package food

import (
	"slices"

	"sipsum/internal/constituent"
)

// States reports whether the food is one in hand and its designer states the constituent itself:
// no table does, no lender, and it follows from no other figures.
func (p *Profile) States(c *constituent.Constituent) bool {
	v, ok := p.Food.Value(c.ID)
	cell := p.Cells[c.Order]
	return ok && p.Food.ID.Table == Own && v.Source == Own && cell.Known && cell.From == p.Food.ID
}

// Fixed reports whether a part of a total is stated as exact, by itself or by a total between
// the two: no draw changes it.
func (p *Profile) Fixed(part, total *constituent.Constituent) bool {
	for at := part; at != total; at = constituent.Must(at.Parent) {
		if cell := p.Cells[at.Order]; cell.Amount > 0 && cell.Exact() && p.States(at) {
			return true
		}
		if at.Parent == "" {
			break
		}
	}
	return false
}

// Yield is how far the parts of a food in hand give way where a draw of them makes more or less
// than 100 g. What nobody stated gives way as one, whatever it is; a stated figure as it varies,
// and one that is exact not at all.
type Yield struct {
	Unsaid  []bool    // by constituent.Constituent.Order: nobody stated it, nor a total of it
	Said    []float64 // by Order: the variance of what is stated
	Between float64   // the variance of all that nobody stated
	Other   bool      // what is of no known kind is nothing but what the others leave
}

// Yield tells how the parts of a food in hand give way; false of any other food: its figures are
// those of one table, and all give way alike.
func (p *Profile) Yield() (Yield, bool) {
	if p.Food.ID.Table != Own || !slices.ContainsFunc(p.Food.Values, func(v Value) bool { return v.Source == Own }) {
		return Yield{}, false
	}
	y := Yield{Unsaid: make([]bool, len(p.Cells)), Said: make([]float64, len(p.Cells))}
	mass := constituent.Must(constituent.Mass)
	y.Other = p.Cell(constituent.MassOther).From == p.Food.ID
	open := make([]float64, len(p.Cells)) // by total: what of it is not exact
	for _, leaf := range constituent.Sums().Leaves(mass.ID) {
		cell, whole := p.Cells[leaf.Order], p.statedWhole(leaf)
		switch {
		case !cell.Known || p.Fixed(leaf, mass) || y.Other && leaf.ID == constituent.MassOther:
		case whole == nil:
			y.Unsaid[leaf.Order] = true
			y.Between += cell.variance()
		default:
			open[whole.Order] += cell.Amount
		}
	}
	for _, leaf := range constituent.Sums().Leaves(mass.ID) {
		cell, whole := p.Cells[leaf.Order], p.statedWhole(leaf)
		if whole != nil && cell.Known && open[whole.Order] > 0 && !p.Fixed(leaf, mass) {
			y.Said[leaf.Order] = p.Cells[whole.Order].variance() * cell.Amount / open[whole.Order]
		}
	}
	return y, true
}

// statedWhole is the topmost that the food states of a leaf and the totals above it; nil if it
// states none.
func (p *Profile) statedWhole(leaf *constituent.Constituent) (whole *constituent.Constituent) {
	for at := leaf; at.ID != constituent.Mass; at = constituent.Must(at.Parent) {
		if p.States(at) {
			whole = at
		}
	}
	return whole
}
