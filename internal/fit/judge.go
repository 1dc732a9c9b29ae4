package fit

import (
	"context"
	"fmt"
	"math"
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/fail"
	"sipsum/internal/optimise"
	"sipsum/internal/unit"
)

// judge holds points of a fit to their targets.
type judge struct {
	Bench
	aims       []Aim
	ranges     []Range
	conditions []condition
	goal       *Aim
	want       assay.Want
	kept       map[string]optimise.Point // as calculated, nothing taken off
	broken     map[string]bool           // points at which a step cannot be done
	offset     []float64                 // by condition: what its margin is less with draws
}

// condition is one margin of a point; a nil claim is that of the glass.
type condition struct {
	of    *claim.Claim
	aim   int // whose part it is; −1: the glass
	place fail.Place
}

func newJudge(b Bench, aims []Aim, ranges []Range) *judge {
	j := &judge{Bench: b, aims: aims, ranges: ranges, want: assay.Want{Draws: true}, kept: map[string]optimise.Point{}, broken: map[string]bool{}}
	for i, a := range aims {
		j.want.Figures = append(j.want.Figures, a.Constituents()...)
		j.want.Chemistry = j.want.Chemistry || a.OfLiquid()
		if a.Goal != nil {
			j.goal = &aims[i]
		}
		for _, c := range a.Conditions {
			j.conditions = append(j.conditions, condition{c, i, a.Place})
		}
	}
	if b.Drink.Glass != nil {
		j.conditions = append(j.conditions, condition{aim: -1})
	}
	j.offset = make([]float64, len(j.conditions))
	return j
}

// amounts gives the amounts of a point, by path, where they differ from those written.
func (j *judge) amounts(x []float64) amount.Amounts {
	other := amount.Amounts{}
	for i, r := range j.ranges {
		if r.leaves(x[i]) {
			other[r.Path] = r.at(x[i])
		}
	}
	return other
}

// point calculates a point. One at which a step cannot be done meets nothing.
func (j *judge) point(ctx context.Context, x []float64) (optimise.Point, error) {
	key := fmt.Sprint(x)
	pt, ok := j.kept[key]
	if !ok {
		var err error
		if pt, err = j.meets(ctx, x); err != nil {
			return pt, err
		}
		j.kept[key] = pt
	}
	return j.less(pt), nil
}

// less takes from the margins of a point what they are to be off by.
func (j *judge) less(pt optimise.Point) optimise.Point {
	pt.Margins = slices.Clone(pt.Margins)
	for k := range pt.Margins {
		pt.Margins[k] -= j.offset[k]
	}
	return pt
}

func (j *judge) meets(ctx context.Context, x []float64) (optimise.Point, error) {
	pt, err := j.with(ctx, j.Central, x)
	if fail.ExitCode(err) == fail.Wrong {
		j.broken[fmt.Sprint(x)] = true
		none := optimise.Point{Goal: math.NaN(), Margins: make([]float64, len(j.conditions))}
		for k := range none.Margins {
			none.Margins[k] = math.Inf(-1)
		}
		if j.goal != nil {
			none.Goal = math.Inf(1)
		}
		return none, nil
	}
	return pt, err
}

// with calculates a point by a plan.
func (j *judge) with(ctx context.Context, plan *assay.Plan, x []float64) (optimise.Point, error) {
	a, err := plan.Run(ctx, j.amounts(x), j.want)
	if err != nil {
		return optimise.Point{}, err
	}
	g := claims.NewGlass(a, j.Declared)
	pt := optimise.Point{Goal: math.NaN(), Margins: make([]float64, len(j.conditions))}
	for k, c := range j.conditions {
		if pt.Margins[k], err = j.margin(c, a, g); err != nil {
			return pt, err
		}
	}
	if j.goal == nil {
		return pt, nil
	}
	low, high, err := j.goal.Goal.Values(g)
	if err != nil {
		return pt, placed(err, j.goal.Place)
	}
	pt.Goal = high[0]
	if j.goal.Goal.Most {
		pt.Goal = -low[0]
	}
	return pt, nil
}

// margin is by how much a condition is met at central values. At its limit it is met or not by the
// sign that was written, and arithmetic's dust does not decide.
func (j *judge) margin(c condition, a *assay.Assay, g *claims.Glass) (float64, error) {
	if c.of == nil {
		return j.Drink.Glass.Base() - a.Volume.Mean, nil
	}
	o, err := c.of.Evaluate(g, nil)
	if err != nil {
		return 0, placed(err, c.place)
	}
	m := o.Margin[0]
	dust := unit.Closeness * math.Max(1, math.Abs(m))
	if len(o.Figure[0]) > 0 {
		dust = unit.Closeness * math.Max(math.Abs(o.Figure[0][0]), math.Abs(m))
	}
	switch {
	case o.Central():
		return math.Max(m, 0), nil
	case math.IsNaN(m), math.IsInf(m, -1), slices.ContainsFunc(o.Gaps, func(g claim.Gap) bool { return g.Loose }):
		return math.Inf(-1), nil // nothing bounds what nobody knows, but the room that there is for it
	case m >= -dust && !c.of.Strict():
		return 0, nil
	}
	return math.Min(m, -dust), nil
}

// placed gives an error of the drink the place of its target.
func placed(err error, at fail.Place) error {
	faults := &fail.List{}
	if faults.Join(at, err); faults.Len() == 0 {
		return err
	}
	return faults.Err(fail.Wrong)
}

// between tells which targets are in each other's way, and by how much each would have to give.
func (j *judge) between(res *Result, c *optimise.Conflict) {
	if c == nil {
		return
	}
	res.Alone = c.Alone
	for i, k := range c.Between {
		at := j.conditions[k].aim
		if at < 0 {
			at = len(j.aims) // the glass stands last
		}
		if !slices.Contains(res.Together, res.Held[at].Text) {
			res.Together = append(res.Together, res.Held[at].Text)
		}
		j.gives(&res.Held[at], j.conditions[k].of, c.Gives[i])
	}
}

// stops finds the conditions without which the goal would be better: those that a neighbour with a
// better goal misses alone, and of what others miss together those of which a search says so.
func (j *judge) stops(ctx context.Context, p optimise.Problem, found optimise.Solution, res *Result) error {
	if j.goal == nil || !found.Met {
		return nil
	}
	near, err := p.Neighbours(found.At)
	if err != nil {
		return err
	}
	alone, also := map[int]bool{}, map[int]bool{}
	for _, x := range near {
		pt, err := p.Eval(ctx, x)
		if err != nil {
			return err
		}
		var misses []int
		for k, m := range pt.Margins {
			if !(m >= 0) {
				misses = append(misses, k)
				also[k] = also[k] || nearer(pt, found.Point)
			}
		}
		if len(misses) == 1 && nearer(pt, found.Point) {
			alone[misses[0]] = true
		}
	}
	p.Variables = slices.Clone(p.Variables)
	for i, x := range found.At {
		p.Variables[i].Start = x
	}
	for k, c := range j.conditions {
		stops := alone[k]
		if also[k] && !stops {
			without := p
			without.Eval = j.taken(p.Eval, k)
			other, err := optimise.Solve(ctx, without)
			if err != nil {
				return err
			}
			stops = other.Met && nearer(other.Point, found.Point)
		}
		if stops {
			res.stoppedBy(j.textOf(c))
		}
	}
	return nil
}

// nearer reports whether a point has more of the goal than another.
func nearer(pt, than optimise.Point) bool {
	return pt.Goal < than.Goal-unit.Closeness*math.Abs(than.Goal)
}

func (j *judge) textOf(c condition) string {
	if c.aim < 0 {
		return TheGlass
	}
	return j.aims[c.aim].Text
}

func (r *Result) stoppedBy(text string) {
	if !slices.Contains(r.StoppedBy, text) {
		r.StoppedBy = append(r.StoppedBy, text)
	}
}

// agreed solves a problem until its answer is what the drink with its draws reads: a reading moves the
// central values by what the draws say of it, so that a run without them is off by a little.
func (j *judge) agreed(ctx context.Context, p optimise.Problem) (optimise.Problem, optimise.Solution, error) {
	const most = 5 // each leaves a small part of what the one before was off by: our own bound
	runs := 0
	for try := 1; ; try++ {
		q, found, err := j.solve(ctx, p)
		if err != nil {
			return q, found, err
		}
		drawn, err := j.with(ctx, j.Drawn, found.At)
		if err != nil {
			return q, found, err
		}
		agree := true
		for k, m := range drawn.Margins {
			if off := found.Point.Margins[k] - m; found.Point.Margins[k] >= 0 && m < 0 && try < most {
				j.offset[k] += off
				agree = false
			}
		}
		runs += found.Runs
		if agree {
			found.Point, found.Runs = drawn, runs
			if found.Met = met(drawn); found.Met {
				found.Conflict = nil
			}
			return q, found, nil
		}
	}
}

func met(pt optimise.Point) bool {
	return !slices.ContainsFunc(pt.Margins, func(m float64) bool { return !(m >= 0) })
}

// solve solves a problem. Targets that nothing decides, whatever the amounts, are then left out of
// it, so that the others are met as well as they can be.
func (j *judge) solve(ctx context.Context, p optimise.Problem) (optimise.Problem, optimise.Solution, error) {
	found, err := optimise.Solve(ctx, p)
	if err != nil || found.Met {
		return p, found, err
	}
	open := undecided(found.Point)
	if len(open) == 0 {
		return p, found, nil
	}
	rest := p
	for _, k := range open {
		rest.Eval = j.taken(rest.Eval, k)
	}
	found, err = optimise.Solve(ctx, rest)
	if err != nil {
		return rest, found, err
	}
	found.Point, err = p.Eval(ctx, found.At)
	return rest, found, err
}

// undecided lists the margins that are no number.
func undecided(pt optimise.Point) []int {
	var open []int
	for k, m := range pt.Margins {
		if math.IsInf(m, -1) {
			open = append(open, k)
		}
	}
	return open
}

// taken takes a condition for met wherever the drink can be made.
func (j *judge) taken(eval evaluation, k int) evaluation {
	return func(ctx context.Context, x []float64) (optimise.Point, error) {
		pt, err := eval(ctx, x)
		if err == nil && !j.broken[fmt.Sprint(x)] {
			pt.Margins = append([]float64(nil), pt.Margins...)
			pt.Margins[k] = 0
		}
		return pt, err
	}
}

// evaluation calculates a point.
type evaluation = func(ctx context.Context, x []float64) (optimise.Point, error)
