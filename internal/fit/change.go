package fit

import (
	"context"
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/composition"
	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

// This file holds a wish to the change that it asks for. What is asked is a share of what the drink has, and what is
// unknown of a food stands in the drink before and after: so the share is asked of both ends of what a figure can be,
// each beside the same end of the drink as it is written.

// written is the drink as it is written, beside which changes are judged.
type written struct {
	aims     []Aim
	declared claims.Declared
	central  *assay.Assay
	drawn    *claims.Glass // the same with draws
}

// before is the drink with draws that ready targets are judged beside.
func before(ctx context.Context, j *judge) (*assay.Assay, error) {
	if j.Beside != nil {
		return j.Beside, nil
	}
	return j.withDraws(ctx, startOf(j.ranges))
}

// begin runs the drink as it is written, by both plans, where a target asks for a change.
func begin(ctx context.Context, j *judge) error {
	if !slices.ContainsFunc(j.aims, func(a Aim) bool { return a.Change }) {
		return nil
	}
	central, err := j.Central.Run(ctx, nil, j.want)
	if err != nil {
		return err
	}
	drawn, err := before(ctx, j)
	if err != nil {
		return err
	}
	j.written = written{j.aims, j.Declared, central, claims.NewGlass(drawn, j.Declared)}
	return nil
}

// changes reports whether a condition is one of a change.
func (w written) changes(c condition) bool {
	return c.of != nil && w.central != nil && w.aims[c.aim].Change
}

// change is the margin of a change in every draw: how far the figure is on the right side of its share of what it was,
// at the end that hurts, counted in the figure as it is told.
func (w written) change(c condition, was, is *claims.Glass) ([]float64, error) {
	limit, share, below := w.shareOf(c)
	low, high, err := ends(c.of.Subject(), was, is)
	if err != nil {
		return nil, placed(err, c.place)
	}
	col := make([]float64, len(low))
	for d := range col {
		a, b := low[d]-share, high[d]-share
		if below {
			a, b = -a, -b
		}
		if col[d] = math.Min(a, b) * limit / share; math.IsNaN(col[d]) {
			col[d] = math.Inf(-1)
		}
	}
	return col, nil
}

// changed is the margin of a change at central values; arithmetic's dust does not decide. A run of the search reads the
// figure as it is told: the lesser of two ends bends where they cross, and the search goes in lines. By what the ends
// with draws are off from it the search is moved (agreed.go).
func (w written) changed(c condition, a *assay.Assay, g *claims.Glass) (m float64, err error) {
	if a.Serving.N > 1 {
		col, err := w.change(c, w.drawn, g)
		if err != nil {
			return 0, err
		}
		m = col[0]
	} else if m, err = w.changeTold(c, a, g); err != nil {
		return 0, placed(err, c.place)
	}
	if limit, _, _ := c.of.Limit(); math.Abs(m) <= unit.Closeness*math.Abs(limit) {
		return 0, nil
	}
	return m, nil
}

// changeTold is the margin of a change by the figures as they are told.
func (w written) changeTold(c condition, a *assay.Assay, g *claims.Glass) (float64, error) {
	of := c.of.Subject()
	was, err := figure(of, w.central, claims.NewGlass(w.central, w.declared))
	if err != nil {
		return 0, err
	}
	is, err := figure(of, a, g)
	limit, share, below := w.shareOf(c)
	m := (is.Mean/was.Mean - share) * limit / share
	switch {
	case math.IsNaN(m):
		return math.Inf(-1), err
	case below:
		return -m, err
	}
	return m, err
}

// shareOf gives what a condition of a change is told to be held to, and the share of the figure that this is.
func (w written) shareOf(c condition) (limit, share float64, below bool) {
	limit, below, _ = c.of.Limit()
	if below {
		return limit, w.aims[c.aim].Most, below
	}
	return limit, w.aims[c.aim].Least, below
}

// ends gives in every draw what share of itself a figure becomes, with what is unknown at its least and at its most.
// Of what was nothing and is nothing, all is left.
func ends(of *claim.Goal, was, is *claims.Glass) (low, high []float64, err error) {
	lowWas, highWas, err := of.Values(was)
	if err != nil {
		return nil, nil, err
	}
	lowIs, highIs, err := of.Values(is)
	shares := func(was, is []float64) []float64 {
		col := make([]float64, min(len(lowWas), len(highWas), len(lowIs), len(highIs)))
		for d := range col {
			if col[d] = is[d] / was[d]; was[d] == 0 && is[d] == 0 {
				col[d] = 1
			}
		}
		return col
	}
	return shares(lowWas, lowIs), shares(highWas, highIs), err
}

// changeOf tells a change: of the figures as they are told, from the least to the most of both ends.
func changeOf(of *claim.Goal, before, after composition.Result, was, is *claims.Glass) (estimate.Summary, error) {
	low, high, err := ends(of, was, is)
	if err != nil || len(low) == 0 {
		return noChange, err
	}
	a, b := summary(low, 1), summary(high, 1)
	s := estimate.Summary{Mean: after.Mean/before.Mean - 1, SD: math.Max(a.SD, b.SD), Low: math.Min(a.Low, b.Low) - 1, High: math.Max(a.High, b.High) - 1}
	if !(before.Mean > 0) || math.IsNaN(s.Low) || math.IsNaN(s.High) {
		return noChange, nil
	}
	s.Low, s.High = math.Min(s.Low, s.Mean), math.Max(s.High, s.Mean)
	return s, nil
}

// noChange is that of a target that asks for none, or of a figure that is not known.
var noChange = estimate.Summary{Mean: math.NaN(), SD: math.NaN(), Low: math.NaN(), High: math.NaN()}
