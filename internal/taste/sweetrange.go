package taste

import (
	"cmp"
	"math"
	"slices"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// SweetRange is a sweetness with the unknown apart: what sugars that nobody has named bring at
// the least, and what they and those that nobody has measured may bring more. Where Sweetness draws
// an unnamed sugar between the least and the most sweet one, nothing here is drawn but what is published.
type SweetRange struct {
	Least   []float64 // grams of sucrose in 100 ml, by draw
	Gaps    []SweetGap
	Factors []estimate.Entry           // the draws of how sweet each substance is
	Without []*constituent.Constituent // there, and no factor for them was found
}

// SweetGap is what nobody knows of a food's sweetness.
type SweetGap struct {
	Food   *food.Food
	Of     *constituent.Constituent
	Unsaid bool      // how much there is of it is known, and not which of them
	Most   []float64 // grams of sucrose in 100 ml, on top of the gaps before it; +Inf where nothing bounds it
}

// RangeOfSweetness gives the sweetness of a liquid with the unknown apart.
func RangeOfSweetness(g Glass) SweetRange {
	out := SweetRange{}
	named := g.named(&out)
	gaps := append(g.unsaid(), g.unmeasured()...)
	base := make([]float64, g.Pot.N)
	for _, x := range gaps {
		for d := range base {
			base[d] += x.least[d]
		}
	}
	level := g.levels(named, base, base)
	out.Least = level
	start := make([]float64, g.Pot.N)
	for _, x := range gaps {
		if slices.ContainsFunc(x.more, func(y float64) bool { return math.IsInf(y, 1) }) {
			x.Most = estimate.Constant(g.Pot.N, math.Inf(1))
			out.Gaps = append(out.Gaps, x.SweetGap)
			continue
		}
		for d := range base {
			base[d] += x.more[d]
		}
		for d := range level {
			start[d] = level[d] + x.more[d]
		}
		next := g.levels(named, base, start)
		x.Most = make([]float64, g.Pot.N)
		for d := range next {
			x.Most[d] = max(next[d]-level[d], 0)
		}
		level = next
		out.Gaps = append(out.Gaps, x.SweetGap)
	}
	return out
}

// named lists the substances of which somebody says how much there is, with their factors drawn as
// Sweetness draws them.
func (g Glass) named(out *SweetRange) []sweet {
	var list []sweet
	for _, s := range sweeteners() {
		grams := estimate.Ratio(g.Pot.Total(s.constituent.ID), g.Volume, perHundred)
		switch {
		case grams[0] == 0 || s.constituent.Kind == constituent.Rest:
		case len(s.strengths) == 0:
			out.Without = append(out.Without, s.constituent)
		default:
			x := sweet{s, grams, g.within(s)}
			list = append(list, x)
			if f := s.at(0); f.low < f.high {
				out.Factors = append(out.Factors, estimate.Entry{Cause: estimate.Constants, Name: "how sweet " + s.constituent.Words() + " is beside sucrose", Column: x.within})
			}
		}
	}
	return list
}

// sweetUnknown is a gap with its two ends in grams of sucrose in 100 ml, as if it were all there is.
type sweetUnknown struct {
	SweetGap
	least, more []float64
}

// unsaid lists, by row, sugars and polyols of which nobody has said which they are: as sweet as the least
// and as the most sweet of those that they may be.
func (g Glass) unsaid() []sweetUnknown {
	var list []sweetUnknown
	for _, s := range sweeteners() {
		if s.constituent.Kind != constituent.Rest {
			continue
		}
		col := g.Pot.Columns.At(s.constituent.ID)
		for row, r := range g.Pot.Rows {
			if col < 0 || !g.Pot.Has(row, col) || g.Pot.Cell(row, col)[0] == 0 {
				continue
			}
			x := sweetUnknown{SweetGap{Food: r.Profile.Food, Of: constituent.Must(s.constituent.Parent), Unsaid: true}, make([]float64, g.Pot.N), make([]float64, g.Pot.N)}
			least, most := g.leastSweet(row, s), g.mostSweet(row, s)
			for d, grams := range g.Pot.Cell(row, col) {
				scale := perHundred / g.Volume[d]
				x.least[d] = scale * filled(grams, least)
				x.more[d] = scale*filled(grams, most) - x.least[d]
			}
			list = append(list, x)
		}
	}
	return list
}

// unmeasured lists, by row, how much sugar, polyol or sweetener there may be that nobody has measured: as
// sweet as the most sweet that it may be.
func (g Glass) unmeasured() []sweetUnknown {
	var list []sweetUnknown
	for _, s := range sweeteners() {
		total := s.constituent
		if total.Parent != "" {
			if total.Kind != constituent.Rest { // each total once, with the row of its rest
				continue
			}
			total = constituent.Must(total.Parent)
		} else if !g.carried(total.ID) {
			continue
		}
		sort := composition.SortOf(g.Pot, total)
		for row, r := range g.Pot.Rows {
			most := sort.UnknownOf(row)
			if most == nil || !slices.ContainsFunc(most, func(x float64) bool { return x != 0 }) {
				continue
			}
			x := sweetUnknown{SweetGap{Food: r.Profile.Food, Of: total}, make([]float64, g.Pot.N), make([]float64, g.Pot.N)}
			sweetest := g.mostSweet(row, s)
			for d, grams := range most {
				x.more[d] = perHundred / g.Volume[d] * filled(grams, sweetest)
			}
			list = append(list, x)
		}
	}
	return list
}

// candidate is a substance that something unnamed may be.
type candidate struct{ factor, most float64 } // grams of it in the row; +Inf where nothing bounds it

// leastSweet and mostSweet list what the unnamed part of a row may be, in the order in which it makes least
// and most sweetness: those substances of its total of which the row does not know how much it holds, and
// after them, or alone, anything by the row of the rest itself.
func (g Glass) leastSweet(row int, rest sweetener) []candidate {
	list := g.mayBe(row, rest, sweetener.least)
	slices.SortStableFunc(list, func(a, b candidate) int { return cmp.Compare(a.factor, b.factor) })
	return append(list, candidate{rest.least(), math.Inf(1)})
}

func (g Glass) mostSweet(row int, rest sweetener) []candidate {
	list := g.mayBe(row, rest, sweetener.most)
	slices.SortStableFunc(list, func(a, b candidate) int { return cmp.Compare(b.factor, a.factor) })
	own := candidate{rest.most(), math.Inf(1)}
	if len(rest.strengths) == 0 { // how sweet it is nobody knows
		own.factor = math.Inf(1)
	}
	return append(list, own)
}

func (g Glass) mayBe(row int, rest sweetener, factor func(sweetener) float64) []candidate {
	var list []candidate
	bounds := g.Pot.Bounds(row)
	for _, s := range sweeteners() {
		c := s.constituent
		bound := bounds[c.Order]
		if c.Parent == "" || c.Parent != rest.constituent.Parent || c.Kind == constituent.Rest || len(s.strengths) == 0 || bound == 0 {
			continue
		}
		if math.IsNaN(bound) {
			bound = math.Inf(1)
		}
		list = append(list, candidate{factor(s), bound})
	}
	return list
}

// filled gives so many grams as sucrose, taken to be the candidates in their order. What is more than they
// may be is anything.
func filled(grams float64, of []candidate) float64 {
	if math.IsNaN(grams) {
		return math.Inf(1)
	}
	sum := 0.0
	for _, c := range of {
		if part := min(grams, c.most); part > 0 {
			sum += part * c.factor
			grams -= part
		}
	}
	return sum
}

// levels finds the sweetness by draw of named substances and of so many grams of sucrose beside them; the
// search begins at a level by draw.
func (g Glass) levels(list []sweet, beside, from []float64) []float64 {
	out := make([]float64, g.Pot.N)
	for d := range out {
		out[d] = settle(list, d, beside[d], from[d])
	}
	return out
}
