package ledger

import (
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// Total gives the column of a constituent over all rows, in grams, summed in
// row order.
func (p *Pot) Total(id constituent.ID) []float64 {
	total := make([]float64, p.N)
	cols := p.Columns.Below(id)
	for row := range p.Rows {
		p.addTo(total, row, cols)
	}
	return total
}

// Central gives the central value of a constituent over all rows, in grams.
func (p *Pot) Central(id constituent.ID) float64 {
	sum := 0.0
	cols := p.Columns.Below(id)
	for row := range p.Rows {
		for _, col := range cols {
			sum += p.Cell(row, col)[0]
		}
	}
	return sum
}

// Of gives the column of a constituent in one row, in grams.
func (p *Pot) Of(row int, id constituent.ID) []float64 {
	total := make([]float64, p.N)
	p.addTo(total, row, p.Columns.Below(id))
	return total
}

// CentralOf gives its central value, what Of has at its head, without the draws.
func (p *Pot) CentralOf(row int, id constituent.ID) float64 {
	sum := 0.0
	for _, col := range p.Columns.Below(id) {
		if cell := p.cells[row][col]; len(cell) > 0 {
			sum += cell[0]
		}
	}
	return sum
}

func (p *Pot) addTo(total []float64, row int, cols []int) {
	for _, col := range cols {
		cell := p.cells[row][col]
		sum := total[:len(cell)] // one check a column, none a draw
		for d, x := range cell {
			sum[d] += x
		}
	}
}

// Mass gives the column of the mass in grams.
func (p *Pot) Mass() []float64 { return p.Total(constituent.Mass) }

// Bound gives the most that the unknown part of a constituent could be over all
// rows, in grams, and which rows are unknown. NaN if a row has no bound.
func (p *Pot) Bound(id constituent.ID) (grams float64, rows []int) {
	order := constituent.Must(id).Order
	for row := range p.Rows {
		b := p.Bounds(row)[order]
		if b == 0 {
			continue
		}
		grams += b // NaN stays NaN
		rows = append(rows, row)
	}
	return grams, rows
}

// OpenWater gives what of a row may be water or anything else, in grams: the mass beyond all
// that its food states, where the water is not known. Nil where it is.
func OpenWater(p *Pot, row int) []float64 { return open(p, row, constituent.Water) }

// OpenAlcohol gives what of a row of a wine, a beer or a spirit may be alcohol or anything
// else, in grams, where nobody has stated its alcohol. Nil where somebody has, and of other
// groups.
func OpenAlcohol(p *Pot, row int) []float64 {
	if !p.Rows[row].Profile.Food.Facts().Alcoholic {
		return nil
	}
	return open(p, row, constituent.Alcohol)
}

// open gives what of a row may be a constituent that its food does not state, or anything
// else: all that it leaves where nothing bounds it.
func open(p *Pot, row int, id constituent.ID) []float64 {
	bound := p.bounds[row][constituent.Must(id).Order]
	if bound == 0 {
		return nil
	}
	grams := p.Of(row, constituent.MassOther)
	for d, x := range grams {
		if x > bound {
			grams[d] = bound
		}
	}
	return grams
}

// Weighty is the share of a sum from which it counts how a part is known (design: the
// parts that make up at least 5 %).
const Weighty = 0.05

// State gives the worst state found among the rows that make up at least 5 % of
// a constituent at central values. With nothing there it is the best of the
// rows' states, or unknown if every row is unknown.
func (p *Pot) State(id constituent.ID) estimate.State {
	c := constituent.Must(id)
	cols := p.Columns.Below(id)
	central := func(row int) float64 {
		sum := 0.0
		for _, col := range cols {
			sum += p.Cell(row, col)[0]
		}
		return sum
	}
	total := 0.0
	for row := range p.Rows {
		total += central(row)
	}
	worst, best := estimate.Measured, estimate.Unknown
	for row := range p.Rows {
		state := rowState(p, row, c)
		best = min(best, state)
		if total > 0 && central(row) >= Weighty*total {
			worst = max(worst, state)
		}
	}
	if total > 0 {
		return worst
	}
	return best
}

// rowState is the state of a constituent in one row: the profile's, at least
// calculated after a step's model; a parent without a figure of its own takes
// the worst of its weighty leaves. What a step made where nothing was known is
// calculated.
func rowState(p *Pot, row int, c *constituent.Constituent) estimate.State {
	cell := p.Rows[row].Profile.Cells[c.Order]
	state := cell.State
	if c.Kind == constituent.Parent && !cell.Known {
		state = leafState(p, row, c)
	}
	if p.Rows[row].Modelled && (state < estimate.Calculated || made(p, row, c)) {
		state = estimate.Calculated
	}
	return state
}

// made reports whether a step has made a constituent that the food itself is
// not known to have.
func made(p *Pot, row int, c *constituent.Constituent) bool {
	col := p.Columns.at[c.Order]
	return col >= 0 && !p.Rows[row].Profile.Cells[c.Order].Known && p.Cell(row, col)[0] > 0
}

func leafState(p *Pot, row int, parent *constituent.Constituent) estimate.State {
	worst, sum := estimate.Unknown, p.Of(row, parent.ID)[0]
	for _, leaf := range constituent.Sums().Leaves(parent.ID) {
		col := p.Columns.at[leaf.Order]
		if col < 0 || sum == 0 || p.Cell(row, col)[0] < Weighty*sum {
			continue
		}
		state := p.Rows[row].Profile.Cells[leaf.Order].State
		if worst == estimate.Unknown {
			worst = state
		}
		worst = max(worst, state)
	}
	return worst
}
