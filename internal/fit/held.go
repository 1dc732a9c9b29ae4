package fit

import (
	"context"
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/chemistry"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/optimise"
	"sipsum/internal/unit"
)

// Beside are the constituents that are told of a serving beside its targets.
var Beside = []constituent.ID{constituent.Sugar, constituent.Energy, constituent.Caffeine, constituent.Alcohol}

// judge runs the answer with its draws, and the drink as it is written.
func (j *judge) judge(ctx context.Context, res *Result, found optimise.Solution) error {
	var err error
	if res.Before, err = before(ctx, j); err != nil {
		return err
	}
	if res.After, err = j.withDraws(ctx, found.At); err != nil {
		return err
	}
	before, after := claims.NewGlass(res.Before, j.Declared), claims.NewGlass(res.After, j.Declared)
	var all together
	for i, a := range j.aims {
		h, err := j.held(res, before, after, i, found.Point, &all)
		if err != nil {
			return placed(err, a.Place)
		}
		res.Held = append(res.Held, h)
	}
	j.glass(res, found.Point, &all)
	res.Sure, res.May = all.shares()
	j.between(res, found.Conflict)
	return nil
}

// held judges one target.
func (j *judge) held(res *Result, before, after *claims.Glass, i int, pt optimise.Point, all *together) (Held, error) {
	a, none := j.aims[i], math.NaN()
	h := Held{Text: a.Text, Ready: a.Ready, Met: true, Hurt: none, Help: none, Goal: a.Goal != nil}
	h.Limit, h.Reaches, h.Gives, h.Moved = none, none, none, noChange
	subject := a.Goal
	if !h.Goal {
		subject = a.Whole().Subject()
	}
	if err := h.tell(subject, res, before, after); err != nil {
		return h, err
	}
	if h.Goal {
		return h, h.askOfGoal(a.Goal, after)
	}
	o, err := a.Whole().Evaluate(after, nil)
	if err != nil {
		return h, err
	}
	holds, err := j.holds(a, before, after)
	if err != nil {
		return h, err
	}
	all.add(holds)
	h.Hurt, h.Help = shareOf(holds[0]), shareOf(holds[1])
	if x, _, ok := a.Whole().Limit(); ok {
		h.Limit = x / h.base(subject)
	}
	for k, c := range j.conditions {
		h.Met = h.Met && (c.aim != i || pt.Margins[k] >= 0)
	}
	_, may := o.AtCentre()
	if a.Change {
		may = holds[1][0]
		if h.Moved, err = changeOf(subject, h.Before, h.After, before, after); err != nil {
			return h, err
		}
	}
	if !h.Met && may {
		h.Settle, err = a.Whole().Settles(after, o)
	}
	return h, err
}

// holds tells in which draws a target holds; of a goal nothing.
func (j *judge) holds(a Aim, before, after *claims.Glass) ([2][]bool, error) {
	if a.Goal != nil {
		return [2][]bool{{true}, {true}}, nil
	}
	if a.Says != "" {
		return beside(a.Whole().Subject(), a.Ready, before, after)
	}
	o, err := a.Whole().Evaluate(after, nil)
	return o.Holds, err
}

// beside judges draw by draw whether a figure stays within shares of what it was: with what is
// unknown at its least and at its most, and surely only if it does with both.
func beside(of *claim.Goal, r Ready, before, after *claims.Glass) (holds [2][]bool, err error) {
	low, high, err := of.Values(before)
	if err != nil {
		return holds, err
	}
	lowThen, highThen, err := of.Values(after)
	a, b := r.within(low, lowThen), r.within(high, highThen)
	for d := range a {
		a[d], b[d] = a[d] && b[d], a[d] || b[d]
	}
	return [2][]bool{a, b}, err
}

// within tells in which draws a figure is within its shares of what it was.
func (r Ready) within(was, is []float64) []bool {
	out := make([]bool, min(len(was), len(is)))
	for d := range out {
		dust := unit.Closeness * math.Abs(was[d])
		out[d] = is[d] >= r.Least*was[d]-dust && is[d] <= r.Most*was[d]+dust
	}
	return out
}

// tell gives the figure of a target before and after; a target may ask for none.
func (h *Held) tell(of *claim.Goal, res *Result, before, after *claims.Glass) error {
	if of == nil {
		return nil
	}
	h.Words = of.Words()
	var err error
	if h.Before, err = figure(of, res.Before, before); err != nil {
		return err
	}
	h.After, err = figure(of, res.After, after)
	return err
}

func (h *Held) base(of *claim.Goal) float64 {
	if of == nil {
		return 1
	}
	_, base := of.Unit()
	return base
}

// askOfGoal says what would settle a goal of which nothing is known.
func (h *Held) askOfGoal(of *claim.Goal, g *claims.Glass) error {
	if !h.After.Unknown && !h.After.Partial {
		return nil
	}
	gaps, err := of.Gaps(g)
	if len(gaps) > 0 {
		h.Settle = &gaps[0]
	}
	return err
}

// figure is what a figure is of a drink, in its own unit.
func figure(of *claim.Goal, a *assay.Assay, g *claims.Glass) (composition.Result, error) {
	name, base := of.Unit()
	switch e := estimated(a.Chemistry, of.Property()); {
	case e == nil:
	case e.Why == "":
		return e.Result, nil
	default: // withheld: the ends of what can be are no figure of it
		return unknown(name, math.NaN(), math.NaN()), nil
	}
	low, high, err := of.Figure(g)
	if err != nil {
		return composition.Result{}, err
	}
	most := summary(high, base)
	if len(low) == 0 || math.IsInf(low[0], 0) {
		return unknown(name, most.Mean, most.High), nil
	}
	r := composition.Known(summary(low, base), name)
	if most.Mean != r.Mean || most.High != r.High {
		r.Partial, r.WithBounds, r.UpTo, r.Coverage = true, most.Mean, most.High, r.Mean/most.Mean
	}
	return r, nil
}

// unknown is a figure of which nothing is known but, it may be, the most that it could be.
func unknown(in string, withBounds, upTo float64) composition.Result {
	none := math.NaN()
	return composition.Result{
		Summary: estimate.Summary{Mean: none, SD: none, Low: none, High: none}, Unit: in, State: estimate.Unknown,
		Coverage: none, WithBounds: withBounds, UpTo: upTo, Unknown: true,
	}
}

// estimated gives what the chemistry has of a property, with the interval that it tells itself; nil
// if it is none of it.
func estimated(c *chemistry.Chemistry, p claim.Property) *chemistry.Estimate {
	switch {
	case c == nil:
		return nil
	case p == claim.PH:
		return &c.PH
	case p == claim.Acidity && len(c.Acidity) > 0:
		return &c.Acidity[0].PerLitre
	case p == claim.BrixAcid:
		return &c.BrixAcid
	}
	return nil
}

// summary summarises a column in a unit; what nothing bounds is no number.
func summary(col []float64, base float64) estimate.Summary {
	if none := math.NaN(); len(col) == 0 || slices.ContainsFunc(col, func(x float64) bool { return math.IsInf(x, 0) || math.IsNaN(x) }) {
		return estimate.Summary{Mean: none, SD: none, Low: none, High: none}
	}
	scaled := make([]float64, len(col))
	for d, x := range col {
		scaled[d] = x / base
	}
	return estimate.Summarise(scaled)
}

// glass adds that the glass does not overflow.
func (j *judge) glass(res *Result, pt optimise.Point, all *together) {
	for k, c := range j.conditions {
		if c.of != nil {
			continue
		}
		none, most := math.NaN(), j.Drink.Glass.Base()
		h := Held{Text: TheGlass, Met: pt.Margins[k] >= 0, Told: Told{Words: "volume", Limit: most, Reaches: none, Gives: none, Moved: noChange}}
		h.Before, h.After = res.Before.Filled, res.After.Filled
		in := j.within(res.After)
		all.add(in)
		h.Hurt = shareOf(in[0])
		h.Help = h.Hurt
		res.Held = append(res.Held, h)
	}
}

// within tells in which draws the glass does not overflow.
func (j *judge) within(a *assay.Assay) [2][]bool {
	in := []bool{a.Filled.Mean <= j.Drink.Glass.Base()}
	for _, x := range a.Filled.Draws {
		in = append(in, x <= j.Drink.Glass.Base())
	}
	return [2][]bool{in, in}
}

// gives says by how much a condition would have to give, and how near its figure comes then.
func (j *judge) gives(h *Held, c *claim.Claim, by float64) {
	if c == nil {
		h.Gives, h.Reaches = by, h.Limit+by
		return
	}
	base := h.base(c.Subject())
	h.Gives = by / base
	if x, below, ok := c.Limit(); ok {
		h.Limit = x / base
		if h.Reaches = h.Limit - h.Gives; below {
			h.Reaches = h.Limit + h.Gives
		}
	}
}

// together holds in which draws several conditions hold at once.
type together [2][]bool

// add takes a condition in. A column of one is the same in every draw; figures of the chemistry have
// fewer draws than others.
func (t *together) add(holds [2][]bool) {
	for side, col := range holds {
		t[side] = both(t[side], col)
	}
}

func both(a, b []bool) []bool {
	if a == nil {
		return b
	}
	at := func(col []bool, d int) bool { return col[min(d, len(col)-1)] }
	n := min(len(a), len(b))
	if n == 1 {
		n = max(len(a), len(b))
	}
	out := make([]bool, n)
	for d := range out {
		out[d] = at(a, d) && at(b, d)
	}
	return out
}

// shares are those of the draws; without a condition there are none.
func (t *together) shares() (sure, may float64) {
	return shareOf(t[0]), shareOf(t[1])
}

func shareOf(col []bool) float64 {
	if len(col) == 0 {
		return math.NaN()
	}
	draws, n := col[min(1, len(col)-1):], 0
	for _, is := range draws {
		if is {
			n++
		}
	}
	return float64(n) / float64(len(draws))
}
