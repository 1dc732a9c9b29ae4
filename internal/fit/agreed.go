package fit

import (
	"context"
	"fmt"
	"math"
	"slices"

	"sipsum/internal/drink"
	"sipsum/internal/optimise"
	"sipsum/internal/unit"
)

// agreed solves a problem until its answer is what the drink with its draws reads: a reading moves the
// central values by what the draws say of it, so that a run without them is off by a little.
func (j *judge) agreed(ctx context.Context, p optimise.Problem) (optimise.Problem, optimise.Solution, error) {
	const most = 5 // each leaves a small part of what the one before was off by: our own bound
	if j.measured() {
		if _, _, err := j.offsets(ctx, startOf(j.ranges)); err != nil {
			return p, optimise.Solution{}, err
		}
	}
	runs := 0
	for try := 1; ; try++ {
		q, found, err := j.solve(ctx, p)
		if err != nil {
			return q, found, err
		}
		drawn, moved, err := j.offsets(ctx, found.At)
		if err != nil {
			return q, found, err
		}
		agree := moved == 0 || found.Met && met(drawn) || !found.Met && moved < hardly
		if runs += found.Runs; agree || try == most {
			found.Point, found.Runs = drawn, runs
			if found.Met = met(drawn); found.Met {
				found.Conflict = nil
			}
			return q, found, nil
		}
		p.Most = max(p.Most/2, 1) // it has been searched once
	}
}

// hardly is by what share of what a target is held to margins may move, where not all is met, and the same amounts stay
// the nearest: our own bound, less than any figure is told to.
const hardly = 0.001

// measured reports whether anything of the drink was read.
func (j *judge) measured() bool {
	return slices.ContainsFunc(j.Drink.Finish, isReading) || slices.ContainsFunc(j.Drink.Components, func(c drink.Component) bool {
		return c.Measured != nil || slices.ContainsFunc(c.Steps, isReading)
	})
}

// offsets makes the margins of a point what they are with draws, on both sides of every target; it tells
// by what share of what it is held to the one moved that moved most.
func (j *judge) offsets(ctx context.Context, x []float64) (drawn optimise.Point, moved float64, err error) {
	central, err := j.with(ctx, j.Central, x)
	if err != nil {
		return drawn, 0, err
	}
	a, err := j.withDraws(ctx, x)
	if err != nil {
		return drawn, 0, err
	}
	if drawn, err = j.read(a); err != nil {
		return drawn, 0, err
	}
	scales := j.scales()
	for k, m := range central.Margins {
		off := m - drawn.Margins[k]
		if dust := unit.Closeness * math.Max(1, math.Abs(m)); math.IsNaN(off) || math.IsInf(off, 0) || math.Abs(off-j.offset[k]) <= dust {
			continue
		}
		moved = math.Max(moved, math.Abs(off-j.offset[k])/scales[k])
		j.offset[k] = off
	}
	return drawn, moved, nil
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
	if j.open = len(open) > 0; !j.open {
		return p, found, nil
	}
	rest := p
	rest.Most = max(rest.Most/2, 1)
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
		if err == nil && j.broken[fmt.Sprint(x)] == "" {
			pt.Margins = append([]float64(nil), pt.Margins...)
			pt.Margins[k] = 0
		}
		return pt, err
	}
}

// evaluation calculates a point.
type evaluation = func(ctx context.Context, x []float64) (optimise.Point, error)
