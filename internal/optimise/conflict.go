package optimise

import (
	"context"
	"math"
	"slices"
)

// Conflict is a least set of targets that no point of the grid meets together.
type Conflict struct {
	Between []int     // targets, in their order
	Gives   []float64 // by how much each would have to give so that all others are met; NaN: even then they are not
	Alone   bool      // one is missed whatever the others are, and gives as if there were none: others are missed too
}

// conflict leaves out one target after the other, as long as the rest still cannot be met (the
// deletion filter of Chinneck and Dravnieks 1991, ORSA J. Comput. 3:157).
func (s *search) conflict(nearest Point) (*Conflict, error) {
	s.more()
	var all, missed []int
	for k, m := range nearest.Margins {
		all = append(all, k)
		if !(m >= 0) {
			missed = append(missed, k)
		}
	}
	in := append([]int(nil), all...)
	for _, k := range missed {
		found, err := s.only([]int{k}, -1)
		if err != nil {
			return nil, err
		}
		if !found.Met {
			return s.alone(k, all, missed)
		}
	}
	for _, k := range all {
		if s.spent() {
			break // what is left may hold more than is in the way
		}
		rest := without(in, k)
		found, err := s.only(rest, -1)
		if err != nil {
			return nil, err
		}
		if !found.Met {
			in = rest
		}
	}
	c := &Conflict{Between: in}
	for _, k := range in {
		found, err := s.only(without(all, k), k)
		if err != nil {
			return nil, err
		}
		c.Gives = append(c.Gives, least(s.seen, k, without(all, k), found))
	}
	return c, nil
}

// alone tells of a target that no point meets, whatever the others are.
func (s *search) alone(k int, all, missed []int) (*Conflict, error) {
	c := &Conflict{Between: []int{k}, Alone: len(missed) > 1}
	others := without(all, k)
	if c.Alone {
		others = nil
	}
	found, err := s.only(others, k)
	c.Gives = []float64{least(s.seen, k, others, found)}
	return c, err
}

// least gives the least miss of a target at which others are met, of what was found and of every
// point that was calculated besides: a walk may end beside a better one. NaN: nowhere.
func least(seen map[string]Point, k int, others []int, found Solution) float64 {
	gives := math.NaN()
	if found.Met {
		gives = found.Point.Goal
	}
	for _, at := range seen {
		met := func(of int) bool { return at.Margins[of] >= 0 }
		if miss := -at.Margins[k]; allOf(others, met) && !(miss >= gives) && !math.IsNaN(miss) {
			gives = miss
		}
	}
	return gives
}

func allOf(list []int, is func(int) bool) bool {
	return !slices.ContainsFunc(list, func(k int) bool { return !is(k) })
}

func without(list []int, k int) []int {
	var rest []int
	for _, x := range list {
		if x != k {
			rest = append(rest, x)
		}
	}
	return rest
}

// only solves for some of the targets, with the least miss of another as the goal (−1: none).
func (s *search) only(targets []int, goal int) (Solution, error) {
	sub := &search{ctx: s.ctx, grid: s.grid, seen: map[string]Point{}, of: s}
	var scales []float64
	for _, k := range targets {
		scales = append(scales, s.p.scale(k))
	}
	sub.p = Problem{Scales: scales, Variables: s.p.Variables, Eval: func(_ context.Context, x []float64) (Point, error) {
		at := make([]int, len(x))
		for i := range x {
			at[i] = int(math.Round(x[i] / s.grid[i].step))
		}
		whole, err := s.eval(at)
		if err != nil {
			return Point{}, err
		}
		part := Point{Goal: math.NaN(), Sizes: whole.Sizes}
		for _, k := range targets {
			part.Margins = append(part.Margins, whole.Margins[k])
		}
		if goal >= 0 {
			part.Goal = -whole.Margins[goal]
		}
		return part, nil
	}}
	return sub.find()
}
