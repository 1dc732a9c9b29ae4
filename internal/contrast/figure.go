package contrast

import (
	"math"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// Figure is a constituent of a serving of both drinks.
type Figure struct {
	Constituent *constituent.Constituent
	A, B        composition.Result
	Difference
	Mostly *Bringer // what brings most of it; nil if there is none
}

// gap is what one food does not know of a constituent, at its most, in both drinks.
type gap struct {
	food *food.Food
	most [2][]float64 // nil: it knows all, or is not in it
	mass [2]float64
}

// figure sets a constituent against itself.
func (p *pair) figure(c *constituent.Constituent) Figure {
	f := Figure{Constituent: c, A: p.result(0, c), B: p.result(1, c)}
	var total [2][]float64
	var gaps []*gap
	byRow := [2][]float64{}
	scale := 1.0
	for side, pot := range p.pots() {
		sort := composition.SortOf(pot, c)
		scale = sort.PerGram
		total[side] = make([]float64, pot.N)
		byRow[side] = make([]float64, len(pot.Rows))
		for row := range pot.Rows {
			if col := sort.Of(row); col != nil {
				byRow[side][row] = col[0]
				for d, x := range col {
					total[side][d] += x
				}
			}
			if most := sort.UnknownOf(row); most != nil {
				gaps = p.addGap(gaps, side, pot.Rows[row], most, pot.CentralOf(row, constituent.Mass))
			}
		}
	}
	col := less(total[1], total[0])
	f.Difference = differenceOf(col, scale)
	p.open(&f.Difference, col, gaps, scale)
	f.Mostly = p.mostly(byRow, f.Mean/scale, scale)
	return f
}

// result is the figure of a serving; what no food of a drink tracks is not known.
func (p *pair) result(side int, c *constituent.Constituent) composition.Result {
	if f, ok := p.assays[side].PerServing.Find(c.ID); ok {
		return f.Result
	}
	none := math.NaN()
	return composition.Result{Unit: c.Unit, State: estimate.Unknown, Coverage: none, WithBounds: none, UpTo: none, Unknown: true, Partial: true}
}

// addGap joins the gaps of one food in several pots.
func (p *pair) addGap(list []*gap, side int, r ledger.Row, most []float64, mass float64) []*gap {
	var at *gap
	for _, g := range list {
		if p.sameFood(g, r, side) {
			at = g
		}
	}
	if at == nil {
		at = &gap{food: r.Profile.Food}
		list = append(list, at)
	}
	if at.most[side] == nil {
		at.most[side] = make([]float64, len(most))
	}
	for d, x := range most {
		at.most[side][d] += x
	}
	at.mass[side] += mass
	return list
}

// sameFood tells whether what a row does not know is what a gap is of. An own food of which the two
// files say otherwise is two.
func (p *pair) sameFood(g *gap, r ledger.Row, side int) bool {
	f := r.Profile.Food
	return g.food.ID == f.ID && (f.ID.Table != food.Own || g.most[side] != nil || !p.restated[f.ID.Code])
}

// open widens a difference by what does not go out.
func (p *pair) open(of *Difference, col []float64, gaps []*gap, scale float64) {
	down, up := make([]float64, len(col)), make([]float64, len(col))
	for _, g := range gaps {
		if g.goesOut() {
			continue
		}
		of.Open = append(of.Open, g.food)
		for d := range col {
			x := g.at(1, d) - g.at(0, d)
			down[d], up[d] = down[d]+math.Min(x, 0), up[d]+math.Max(x, 0) // NaN stays NaN
		}
	}
	if len(of.Open) > 0 {
		of.Least, of.Most = widened(col, down, up, scale)
		of.Least, of.Most = math.Min(of.Least, of.Low), math.Max(of.Most, of.High)
	}
}

func (g *gap) at(side, d int) float64 {
	if g.most[side] == nil {
		return 0
	}
	return g.most[side][d]
}

// goesOut reports whether both drinks do not know the same of as much of a food.
func (g *gap) goesOut() bool {
	if g.most[0] == nil || g.most[1] == nil {
		return false
	}
	if math.IsNaN(g.most[0][0]) || math.IsNaN(g.most[1][0]) {
		return math.IsNaN(g.most[0][0]) && math.IsNaN(g.most[1][0]) && near(g.mass[0], g.mass[1])
	}
	for d := range g.most[0] {
		if !near(g.most[0][d], g.most[1][d]) {
			return false
		}
	}
	return true
}

func near(x, y float64) bool {
	return math.Abs(x-y) <= unit.Closeness*max(math.Abs(x), math.Abs(y))
}
