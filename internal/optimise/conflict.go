package optimise

import (
	"context"
	"math"
)

// Conflict is a least set of targets that no point of the grid meets together.
type Conflict struct {
	Between []int     // targets, in their order
	Gives   []float64 // by how much each would have to give so that all others are met; NaN: even then they are not
}

// conflict leaves out one target after the other, as long as the rest still cannot be met (the
// deletion filter of Chinneck and Dravnieks 1991, ORSA J. Comput. 3:157).
func (s *search) conflict() (*Conflict, error) {
	n := len(s.p.Variables)
	at := make([]int, n)
	for i, g := range s.grid {
		at[i] = g.start
	}
	pt, err := s.eval(at)
	if err != nil {
		return nil, err
	}
	var all, in []int
	for k := range pt.Margins {
		all = append(all, k)
	}
	in = append(in, all...)
	for _, k := range all {
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
		gives := math.NaN()
		if found.Met {
			gives = found.Point.Goal
		}
		c.Gives = append(c.Gives, gives)
	}
	return c, nil
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
	sub := &search{ctx: s.ctx, grid: s.grid, seen: map[string]Point{}}
	sub.p = Problem{Variables: s.p.Variables, Eval: func(_ context.Context, x []float64) (Point, error) {
		at := make([]int, len(x))
		for i := range x {
			at[i] = int(math.Round(x[i] / s.grid[i].step))
		}
		whole, err := s.eval(at)
		if err != nil {
			return Point{}, err
		}
		part := Point{Goal: math.NaN()}
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
