package fit

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"sipsum/internal/fail"
	"sipsum/internal/optimise"
	"sipsum/internal/unit"
)

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

// edges finds the steps beside an answer that cannot be made: there the search ended, and not at the
// end of a range.
func (j *judge) edges(ctx context.Context, res *Result) error {
	if res.Met && j.goal == nil {
		return nil
	}
	const beside, many = 0.02, 12 // of an amount; amounts of which that is asked: our own bounds
	for i, m := range res.Moves[:min(len(res.Moves), many)] {
		for _, by := range []float64{-1, 1} {
			at := math.Round((m.To+by*max(m.Step, beside*m.To))/m.Step) * m.Step
			if at < m.From || at > m.Range.To {
				continue
			}
			x := startOf(j.ranges)
			for k, other := range res.Moves {
				x[k] = other.To
			}
			x[i] = at
			if _, err := j.point(ctx, x); err != nil {
				return err
			}
			if why := j.broken[fmt.Sprint(x)]; why != "" {
				res.Edges = append(res.Edges, Edge{Move: i, More: by > 0, Why: why})
			}
		}
	}
	return nil
}

// whyOf says why something cannot be done, in a word at least.
func whyOf(err error) string {
	var f *fail.Error
	if errors.As(err, &f) && len(f.Faults) > 0 {
		return f.Faults[0].What
	}
	return err.Error()
}
