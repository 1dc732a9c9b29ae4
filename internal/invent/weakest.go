package invent

import (
	"context"
	"math"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/claim"
	"sipsum/internal/fit"
	"sipsum/internal/food"
)

// Weakest is the figure by which a design is most likely to miss.
type Weakest struct {
	Target string     // that fails in most draws
	Of     *food.Food // what is put in; nil: the drink as it is written
	Figure claim.Addend
	Share  float64 // of the variance of what the target compares
}

// Called names a figure that is no constituent.
func (w *Weakest) Called() string {
	switch p := w.Figure.Property; p {
	case claim.PH, claim.Acidity:
		return "the acids"
	case claim.Strength:
		return "the alcohol"
	case claim.Brix:
		return "what a refractometer reads"
	default:
		return "the " + string(p)
	}
}

// weakest finds the condition that holds in fewest draws, and the figure with which it varies most; nil where
// none varies.
func (s *search) weakest(ctx context.Context, d Design) (*Weakest, error) {
	var cups []addends
	water, err := s.assayed(ctx, waterCup, s.ensemble())
	if err != nil {
		return nil, err
	}
	off := newAddends(water, s.ensemble().N)
	for _, i := range d.of {
		a, err := s.assayed(ctx, s.liquids[i].cup(), s.ensemble())
		if err != nil {
			return nil, err
		}
		cups = append(cups, newAddends(a, s.ensemble().N))
	}
	var w *Weakest
	least := math.Inf(1)
	for _, c := range s.conditions {
		next, z := s.spreads(c, d, cups, off)
		if z < least {
			w, least = next, z
		}
	}
	return w, nil
}

// spreads tells by how many standard deviations a condition holds, and what figure has the most part in them.
func (s *search) spreads(c condition, d Design, cups []addends, off addends) (*Weakest, float64) {
	w := &Weakest{Target: s.textOf(c)}
	sum := constant(off.n, c.Const)
	most, all := 0.0, 0.0
	add := func(t claim.Term, of *food.Food, col []float64) {
		for n := range sum {
			sum[n] += col[n]
		}
		v := stat.Variance(col[1:], nil)
		if all += v; v > most {
			most, w.Of, w.Figure = v, of, t.Of
		}
	}
	for _, t := range c.Terms {
		add(t, nil, scaled(s.own, t, nil, 1))
		for n, cup := range cups {
			add(t, d.Parts[n].Food, scaled(cup, t, &off, d.grams[n]/measured))
		}
	}
	sd := stat.StdDev(sum[1:], nil)
	if !(sd > 0) || math.IsInf(sum[0], 0) {
		return nil, math.Inf(1)
	}
	w.Share = most / all
	return w, sum[0] / sd
}

// scaled is what a term counts of an assay, less that of another, at the end that hurts.
func scaled(x addends, t claim.Term, less *addends, times float64) []float64 {
	side := func(x addends) []float64 {
		least, most, _ := x.of(t.Of)
		if t.Times < 0 {
			return most
		}
		return least
	}
	of, out := side(x), constant(x.n, 0)
	var off []float64
	if less != nil {
		off = side(*less)
	}
	for d := range out {
		out[d] = t.Times * times * of[d]
		if off != nil {
			out[d] -= t.Times * times * off[d]
		}
	}
	return out
}

// textOf is the target that a condition is of.
func (s *search) textOf(c condition) string {
	if c.aim < 0 {
		return fit.TheGlass
	}
	return s.aims[c.aim].Text
}
