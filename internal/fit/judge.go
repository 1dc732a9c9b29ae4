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
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
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
	kept       map[string]optimise.Point
}

// condition is one margin of a point; a nil claim is that of the glass.
type condition struct {
	of    *claim.Claim
	aim   int // whose part it is; −1: the glass
	place fail.Place
}

func newJudge(b Bench, aims []Aim, ranges []Range) *judge {
	j := &judge{Bench: b, aims: aims, ranges: ranges, want: assay.Want{Draws: true}, kept: map[string]optimise.Point{}}
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
	return j
}

// amounts gives the amounts of a point, by path, where they differ from those written.
func (j *judge) amounts(x []float64) amount.Amounts {
	other := amount.Amounts{}
	for i, r := range j.ranges {
		if x[i] != r.Written.Number {
			other[r.Path] = r.at(x[i])
		}
	}
	return other
}

// point calculates a point. One at which a step cannot be done meets nothing.
func (j *judge) point(ctx context.Context, x []float64) (optimise.Point, error) {
	key := fmt.Sprint(x)
	if pt, ok := j.kept[key]; ok {
		return pt, nil
	}
	pt, err := j.meets(ctx, x)
	if err == nil {
		j.kept[key] = pt
	}
	return pt, err
}

func (j *judge) meets(ctx context.Context, x []float64) (optimise.Point, error) {
	pt, err := j.at(ctx, x)
	if fail.ExitCode(err) == fail.Wrong {
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

func (j *judge) at(ctx context.Context, x []float64) (optimise.Point, error) {
	a, err := j.Central.Run(ctx, j.amounts(x), j.want)
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
	case math.IsNaN(m):
		return math.Inf(-1), nil
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

// judge runs the answer with its draws, and the drink as it is written.
func (j *judge) judge(ctx context.Context, res *Result, found optimise.Solution) error {
	want := j.want
	want.Figures = append(want.Figures, constituent.Energy)
	want.Intervals, want.Chemistry = true, true
	var err error
	if res.Before, err = j.Drawn.Run(ctx, nil, want); err != nil {
		return err
	}
	if res.After, err = j.Drawn.Run(ctx, res.Amounts(), want); err != nil {
		return err
	}
	g := claims.NewGlass(res.After, j.Declared)
	for i, a := range j.aims {
		h, err := j.held(g, i, a, found.Point)
		if err != nil {
			return placed(err, a.Place)
		}
		res.Held = append(res.Held, h)
	}
	j.glass(res, found.Point)
	j.between(res, found.Conflict)
	return nil
}

func (j *judge) held(g *claims.Glass, i int, a Aim, pt optimise.Point) (Held, error) {
	none := math.NaN()
	h := Held{Text: a.Text, Met: true, Hurt: none, Help: none, Goal: a.Goal != nil, Gives: none}
	if h.Goal {
		low, high, err := a.Goal.Values(g)
		if err != nil {
			return h, err
		}
		h.Figure = summary(low)
		if !a.Goal.Most {
			h.Figure = summary(high)
		}
		return h, nil
	}
	whole, err := a.Whole().Evaluate(g, nil)
	if err != nil {
		return h, err
	}
	h.Hurt, h.Help, h.Figure = whole.Sure, whole.May, summary(whole.Figure[0])
	for k, c := range j.conditions {
		h.Met = h.Met && (c.aim != i || pt.Margins[k] >= 0)
	}
	return h, nil
}

func summary(col []float64) estimate.Summary {
	if none := math.NaN(); len(col) == 0 || math.IsInf(col[0], 0) {
		return estimate.Summary{Mean: none, SD: none, Low: none, High: none}
	}
	return estimate.Summarise(col)
}

// glass adds that the glass does not overflow.
func (j *judge) glass(res *Result, pt optimise.Point) {
	for k, c := range j.conditions {
		if c.of != nil {
			continue
		}
		h := Held{Text: theGlass, Met: pt.Margins[k] >= 0, Figure: res.After.Volume.Summary, Gives: math.NaN()}
		draws, in := res.After.Volume.Draws, 0
		for _, x := range draws {
			if x <= j.Drink.Glass.Base() {
				in++
			}
		}
		h.Hurt = float64(in) / float64(max(len(draws), 1))
		h.Help = h.Hurt
		res.Held = append(res.Held, h)
	}
}

// between tells which targets are in each other's way, and by how much each would have to give.
func (j *judge) between(res *Result, c *optimise.Conflict) {
	if c == nil {
		return
	}
	for i, k := range c.Between {
		at := j.conditions[k].aim
		if at < 0 {
			at = len(j.aims) // the glass stands last
		}
		if !slices.Contains(res.Together, res.Held[at].Text) {
			res.Together = append(res.Together, res.Held[at].Text)
		}
		res.Held[at].Gives = c.Gives[i]
	}
}

// stops finds the conditions without which the goal would be better.
func (j *judge) stops(ctx context.Context, p optimise.Problem, found optimise.Solution, res *Result) error {
	if j.goal == nil || !found.Met {
		return nil
	}
	for k, c := range j.conditions {
		without := p
		without.Eval = func(ctx context.Context, x []float64) (optimise.Point, error) {
			pt, err := p.Eval(ctx, x)
			if err == nil && !math.IsInf(pt.Margins[k], -1) {
				pt.Margins = append([]float64(nil), pt.Margins...)
				pt.Margins[k] = 0
			}
			return pt, err
		}
		other, err := optimise.Solve(ctx, without)
		if err != nil {
			return err
		}
		if other.Met && other.Point.Goal < found.Point.Goal-unit.Closeness*math.Abs(found.Point.Goal) {
			text := theGlass
			if c.aim >= 0 {
				text = j.aims[c.aim].Text
			}
			if !slices.Contains(res.StoppedBy, text) {
				res.StoppedBy = append(res.StoppedBy, text)
			}
		}
	}
	return nil
}
