package food

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

// rounding is what the digits of published figures may take from or add to 100 g, per
// gram: five figures printed to a tenth of a gram.
const rounding = 0.0025

// worthSaying is the share of a total by which its parts must exceed it before a
// note tells: less is the rounding of published figures (our own bound).
const worthSaying = 0.01

// byDifference reports whether a total is what tables find by taking the other
// parts from 100 g: no measurement of its own.
func byDifference(total *constituent.Constituent) bool {
	return total.ID == constituent.Carbohydrate || total.ID == constituent.Available
}

// excess deals with parts that make up more than their published total: no part
// is ever more than its whole. A total by difference gives way to its parts, which
// somebody analysed. Parts of which nothing was found but limits are within the limit
// of a total of which nothing was found either. A measured total and its parts meet,
// each by its variance, where two standard deviations of both allow it; where they
// contradict each other the parts make the total. A note says what was published.
func (e *entry) excess(total *constituent.Constituent, over float64) {
	cell := e.cell(total)
	published, parts, both := cell.Amount, cell.Amount+over, cell.variance()+e.variance(total)
	limits := limitsOf(e, total)
	switch {
	case cell.Limit > 0 && e.nothingFound(total):
		e.scale(total, published/parts)
		return
	case !byDifference(total) && published > 0 && over <= 2*math.Sqrt(both):
		cell.Amount = published + over*cell.variance()/both
		e.scale(total, cell.Amount/parts)
	default:
		cell.Amount = parts
	}
	if cell.Limit > 0 { // what was found of the parts is more than the middle of the limit
		cell.Limit, cell.SD = 0, math.Sqrt(e.variance(total))
	}
	if over > worthSaying*published {
		with := ""
		if limits > worthSaying*published {
			with = ", half of what could be there unseen among them"
		}
		whole, _, _ := strings.Cut(total.Name, ",")
		e.note("over total", total.ID, "it holds %.3g g of %s in 100 g%s, more than the %.3g g published as its %s: %.3g g counts", unit.Hundred*parts, partsSaid(e, total), with, unit.Hundred*published, whole, unit.Hundred*cell.Amount)
	}
}

// partsSaid names the largest known parts of a total: our own bound, who wants all sees the
// food.
func partsSaid(e *entry, total *constituent.Constituent) string {
	const most = 3
	var known []*constituent.Constituent
	for _, leaf := range constituent.Sums().Leaves(total.ID) {
		if cell := e.cell(leaf); cell.Known && cell.Amount > 0 && leaf.Kind != constituent.Rest {
			known = append(known, leaf)
		}
	}
	slices.SortStableFunc(known, func(a, b *constituent.Constituent) int { return cmp.Compare(e.cell(b).Amount, e.cell(a).Amount) })
	var names []string
	for i, part := range known {
		if i == most {
			names = append(names, "others")
			break
		}
		names = append(names, part.Name)
	}
	if len(names) == 0 {
		return "its parts"
	}
	return clean.Listed(names)
}

// limitsOf is what parts of which nothing was found but a limit bring to a total: the
// publisher printed no such amounts.
func limitsOf(e *entry, total *constituent.Constituent) (sum float64) {
	for _, leaf := range constituent.Sums().Leaves(total.ID) {
		if cell := e.cell(leaf); cell.Known && cell.Limit > 0 {
			sum += cell.Amount
		}
	}
	return sum
}

// nothingFound reports whether all that is known of the parts of a total are limits, and
// zeros.
func (e *entry) nothingFound(total *constituent.Constituent) bool {
	for _, leaf := range constituent.Sums().Leaves(total.ID) {
		if cell := e.cell(leaf); cell.Known && cell.Amount > 0 && cell.Limit == 0 {
			return false
		}
	}
	return true
}

// scale makes the known parts of a total times factor.
func (e *entry) scale(total *constituent.Constituent, factor float64) {
	for _, leaf := range constituent.Sums().Leaves(total.ID) {
		e.cell(leaf).times(factor)
	}
}

// close makes the parts of 100 g add up to 100 g. Where they make more than two standard
// deviations allow, the row contradicts itself: the water, which is what tables measure
// best, stands as published, and the solids are lowered to what it leaves. Less, where no
// carbohydrate was found as what the others leave of 100 g, is of samples of unlike water: the
// water gives way as far as it may, one figure and not all, and what is left is scaled.
func (e *entry) close() {
	mass, water := constituent.Must(constituent.Mass), e.cell(constituent.Must(constituent.Water))
	parts, _ := e.sum(mass) // what nobody has named is among them, so there is some
	const much = 0.03       // our own bound: tables are said to close within it
	excess, factor := parts-whole, whole/parts
	difference := e.published[constituent.Must(constituent.Carbohydrate).Order]
	switch {
	case !e.Food.Chemical && excess > rounding && excess > 2*math.Sqrt(e.variance(mass)) && e.weighed() && water.Amount < whole:
		e.note("contradiction", constituent.Mass, "its published parts add up to %.4g g in 100 g, more than figures like these can be off: the water stands, and all else is lowered to what it leaves", unit.Hundred*parts)
		factor = (whole - water.Amount) / (parts - water.Amount)
		water.times(1 / factor)
	case excess > dust && !e.Food.Chemical && !difference && e.weighed() && water.Amount > 0:
		left := water.Amount - min(excess, 2*water.SD, water.Amount)
		factor = whole / (parts - water.Amount + left)
		if excess > much {
			e.note("over mass", constituent.Mass, "its published parts add up to %.4g g in 100 g: the water counts as %.3g g, and all are scaled to 100 g", unit.Hundred*parts, unit.Hundred*left*factor)
		}
		water.times(left / water.Amount)
	case excess > much:
		e.note("over mass", constituent.Mass, "its published parts add up to %.4g g in 100 g: all are scaled to 100 g", unit.Hundred*parts)
	}
	e.scale(mass, factor)
	for _, c := range constituent.All() {
		if c.Kind == constituent.Parent { // from here on a parent is the sum of its parts and nothing else
			e.cell(c).Amount, _ = e.sum(c)
		}
	}
	e.cell(mass).Known, e.cell(mass).State = true, estimate.Calculated
	for i := range e.Totals {
		e.Totals[i].Cell.times(factor)
	}
}

// variance is that of what is known of a constituent: of its parts, or of a
// published total that knows better.
func (e *entry) variance(c *constituent.Constituent) float64 {
	if c.Kind != constituent.Parent {
		if cell := e.cell(c); cell.Known {
			return cell.variance()
		}
		return 0
	}
	sum := 0.0
	for _, part := range constituent.Sums().Children(c.ID) {
		sum += e.variance(part)
	}
	for _, t := range e.Totals {
		if t.Constituent == c {
			return min(sum, t.Cell.variance())
		}
	}
	return sum
}
