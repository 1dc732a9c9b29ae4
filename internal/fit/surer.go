package fit

import (
	"context"
	"math"

	"sipsum/internal/assay"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/estimate"
	"sipsum/internal/optimise"
	"sipsum/internal/unit"
)

// surer looks beside an answer of least movement for one that moves a little more and holds more
// surely: the least movement ends where a target is only just met, and half of the draws miss it there.
// A goal is brought as far: the target that stops it stands at its limit by nature.
func (j *judge) surer(ctx context.Context, p optimise.Problem, found optimise.Solution, res *Result) (optimise.Solution, error) {
	if !found.Met || len(j.amounts(found.At)) == 0 {
		return found, nil
	}
	before, err := before(ctx, j)
	if err != nil {
		return found, err
	}
	was := claims.NewGlass(before, j.Declared)
	sure, may, spreads, err := j.chances(ctx, was, found.At)
	if holds, _ := claim.Sides(sure); err != nil || holds {
		return found, err
	}
	l := unit.LimitOf("movement spent on surety", "share")
	at, err := optimise.Surer(ctx, p, found.At, spreads, optimise.Room{Share: l.High, Least: l.Low})
	if err != nil {
		return found, err
	}
	then, _, _, err := j.chances(ctx, was, at)
	if err != nil || !(then >= sure+1/float64(unit.Hundred)) {
		return found, err
	}
	a, err := j.withDraws(ctx, at)
	if err != nil {
		return found, err
	}
	pt, err := j.read(a)
	if err != nil || !met(pt) || pt.Goal > found.Point.Goal+unit.Closeness*math.Abs(found.Point.Goal) {
		return found, err
	}
	found.At, found.Point = at, pt
	if math.IsNaN(res.Least[0]) {
		res.Least = [2]float64{sure, may}
	}
	return found, nil
}

// chances tells how often all conditions hold at a point, and how far the margin of each spreads.
func (j *judge) chances(ctx context.Context, before *claims.Glass, x []float64) (sure, may float64, spreads []float64, err error) {
	a, err := j.withDraws(ctx, x)
	if err != nil {
		return 0, 0, nil, err
	}
	g := claims.NewGlass(a, j.Declared)
	var all together
	for i, aim := range j.aims {
		holds, err := j.holds(aim, before, g)
		if err != nil {
			return 0, 0, nil, placed(err, j.aims[i].Place)
		}
		all.add(holds)
	}
	for _, c := range j.conditions {
		col, err := j.column(c, a, before, g)
		if err != nil {
			return 0, 0, nil, placed(err, c.place)
		}
		spreads = append(spreads, estimate.Summarise(col).SD)
	}
	if j.Drink.Glass != nil {
		all.add(j.within(a))
	}
	sure, may = all.shares()
	return sure, may, spreads, nil
}

// column is the margin of a condition in every draw. Of a ready target it is that to what the same
// draw was.
func (j *judge) column(c condition, a *assay.Assay, before, after *claims.Glass) ([]float64, error) {
	if c.of == nil {
		return append([]float64{a.Filled.Mean}, a.Filled.Draws...), nil
	}
	r := Ready{}
	if c.aim >= 0 {
		r = j.aims[c.aim].Ready
	}
	if j.changes(c) {
		return j.change(c, before, after)
	}
	if r.Says == "" {
		o, err := c.of.Evaluate(after, nil)
		return o.Margin, err
	}
	_, was, err := c.of.Subject().Values(before)
	if err != nil {
		return nil, err
	}
	_, is, err := c.of.Subject().Values(after)
	_, below, _ := c.of.Limit()
	to := r.Least
	if below {
		to = r.Most
	}
	col := make([]float64, min(len(was), len(is)))
	for d := range col {
		col[d] = is[d] - to*was[d]
	}
	return col, err
}
