package claims

import (
	"cmp"
	"math"
	"slices"

	"sipsum/internal/claim"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
	"sipsum/internal/taste"
	"sipsum/internal/unit"
)

// sweetness is the sucrose equivalents of the drink in g/ml (package taste). Sugars of which nobody has said
// which they are count as the least sweet that they may be, and are a gap up to the sweetest; so is what
// nobody has measured.
func (g *Glass) sweetness() claim.Figure {
	if g.sweet != nil {
		return *g.sweet
	}
	f := g.sweetFigure()
	g.sweet = &f
	return f
}

func (g *Glass) sweetFigure() claim.Figure {
	glass := g.assay.Glass()
	if why := liquid.TooDry(glass.Pot); why != "" {
		return claim.Figure{Known: []float64{0}, Unknown: true, Gaps: []claim.Gap{{Key: "sweetness", Most: []float64{math.Inf(1)}, What: "the sweetness of the drink (withheld: " + why + ")"}}}
	}
	r := taste.RangeOfSweetness(glass)
	g.factors = r.Factors
	perMl := func(col []float64) []float64 {
		out := make([]float64, len(col))
		for d, x := range col {
			out[d] = x / unit.Hundred
		}
		return out
	}
	f := claim.Figure{Known: perMl(r.Least)}
	for _, x := range r.Gaps {
		gap := claim.Gap{Key: string(x.Of.ID) + " of " + g.stands(x.Food.ID).String(), Most: perMl(x.Most), What: x.Of.Words() + " of " + shortName(x.Food)}
		if x.Unsaid {
			gap.Key, gap.What = "which "+gap.Key, "which "+gap.What+" they are"
			gap.Settle, gap.Where = lineFor(x.Food, whichOf(x, g.cells(x.Food))...)
		} else {
			g.unknowns[gap.Key] = unknown{x.Food, x.Of, g.cells(x.Food)[x.Of.Order].Bound}
			gap.Settle, gap.Where = lineFor(x.Food, x.Of)
		}
		f.Gaps = added(f.Gaps, gap)
	}
	for _, c := range r.Without {
		f.Gaps = append(f.Gaps, claim.Gap{Key: "how sweet " + string(c.ID) + " is", Most: []float64{math.Inf(1)}, What: "how sweet " + c.Words() + " is: no factor was found in print"})
	}
	f.Unknown = f.Known[0] == 0 && len(f.Gaps) > 0
	return f
}

// cells is what is known of a food of the serving.
func (g *Glass) cells(f *food.Food) []food.Cell {
	i := slices.IndexFunc(g.assay.Serving.Rows, func(r ledger.Row) bool { return r.Profile.Food == f })
	return g.assay.Serving.Rows[i].Profile.Cells
}

// whichOf lists the few that sugars nobody has named may be most of, by what is known of their food.
func whichOf(x taste.SweetGap, cells []food.Cell) []*constituent.Constituent {
	const few = 4
	most := func(c *constituent.Constituent) float64 {
		if bound := cells[c.Order].Bound; food.Stated(bound) {
			return bound
		}
		return math.Inf(1)
	}
	list := slices.DeleteFunc(slices.Clone(constituent.Sums().Leaves(x.Of.ID)), func(c *constituent.Constituent) bool {
		return c.Kind == constituent.Rest || cells[c.Order].Known
	})
	slices.SortStableFunc(list, func(a, b *constituent.Constituent) int { return cmp.Compare(most(b), most(a)) })
	if len(list) == 0 {
		return []*constituent.Constituent{x.Of}
	}
	return list[:min(few, len(list))]
}
