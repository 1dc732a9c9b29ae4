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
	drawn      map[string]*assay.Assay   // runs with draws, by their amounts
	kept       map[string]optimise.Point // as calculated, nothing taken off
	broken     map[string]string         // points at which a step cannot be done, and why
	open       bool                      // targets that nothing decides were left out of the last search
	offset     []float64                 // by condition: what its margin is less with draws

	written // of what is held to a change
}

// condition is one margin of a point; a nil claim is that of the glass.
type condition struct {
	of    *claim.Claim
	aim   int // whose part it is; −1: the glass
	place fail.Place
}

func newJudge(b Bench, aims []Aim, ranges []Range) *judge {
	j := &judge{Bench: b, aims: aims, ranges: ranges, want: assay.Want{Draws: true, Bare: true}, kept: map[string]optimise.Point{}, drawn: map[string]*assay.Assay{}, broken: map[string]string{}}
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
		j.broken[fmt.Sprint(x)] = whyOf(err)
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
	return j.read(a)
}

// withDraws runs a point with its draws, once: as far as it is told of the answer.
func (j *judge) withDraws(ctx context.Context, x []float64) (*assay.Assay, error) {
	key := fmt.Sprint(x)
	if a := j.drawn[key]; a != nil {
		return a, nil
	}
	want := j.want
	want.Figures = slices.Concat(want.Figures, Beside)
	want.Intervals, want.Chemistry, want.Bare = true, true, false
	a, err := j.Drawn.Run(ctx, j.amounts(x), want)
	if err == nil {
		j.drawn[key] = a
	}
	return a, err
}

// read reads the conditions and the goal of a run.
func (j *judge) read(a *assay.Assay) (optimise.Point, error) {
	var err error
	g := claims.NewGlass(a, j.Declared)
	pt := optimise.Point{Goal: math.NaN(), Margins: make([]float64, len(j.conditions)), Sizes: []float64{a.Mass.Mean, a.Volume.Mean}}
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
	words, err := j.goal.Goal.Void(g)
	if err == nil && words != "" {
		err = void(words, j.goal.Place)
	}
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
		return j.Drink.Glass.Base() - a.Filled.Mean, nil
	}
	if j.changes(c) {
		return j.changed(c, a, g)
	}
	o, err := c.of.Evaluate(g, nil)
	if err != nil {
		return 0, placed(err, c.place)
	}
	if o.Void != "" {
		return 0, void(o.Void, c.place)
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

// void says that a target has no value.
func void(of string, at fail.Place) error {
	faults := &fail.List{}
	faults.Add(at, "multiply instead: serving(SUGAR) > 2 * serving(CAFFN) says what a ratio does, and has a value where there is none of one", "the target divides by %s, of which no figure of the drink has any", of)
	return faults.Err(fail.Wrong)
}

// scales is in what a miss of each condition is counted: in what it is held to, so that a pour that was
// written otherwise is as near. 0 where that is no number.
func (j *judge) scales() []float64 {
	scales := make([]float64, len(j.conditions))
	for k, c := range j.conditions {
		if c.of == nil {
			scales[k] = j.Drink.Glass.Base()
		} else if x, _, ok := c.of.Limit(); ok {
			scales[k] = math.Abs(x)
		}
	}
	return scales
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
