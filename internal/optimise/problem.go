package optimise

import (
	"context"
	"errors"
	"math"
)

// Variable is an amount that may change, on the steps of a scale.
type Variable struct {
	From, To float64 // the least and the most, in the unit of Step
	Step     float64 // what the scale shows; amounts are its multiples
	Start    float64 // as it is written
}

// Point is a problem calculated at some amounts.
type Point struct {
	Margins []float64 // of the targets: by how much each is met; below zero it is missed
	Goal    float64   // what should be least; NaN: nothing but the change
}

// Problem is what should be met, and what may change.
type Problem struct {
	Variables []Variable
	Eval      func(ctx context.Context, at []float64) (Point, error) // the same for the same amounts
	Brief     bool                                                   // nobody asks what is in the way where not all is met
}

// Solution is the best point found.
type Solution struct {
	At     []float64
	Point  Point
	Met    bool // every target is
	Proven bool // no other point of the grid is better: every margin is linear, and all were searched
	Runs   int  // of Eval

	Conflict *Conflict // nil if every target is met
}

// ErrNoAmount says that an amount has no multiple of its step between its ends.
var ErrNoAmount = errors.New("no step of the scale between the ends")

// Solve finds, of the points of the grid at which every target is met, the one with the least
// goal, and of those the one with the least change; if there is none, the point that misses least
// and which targets are in each other's way.
func Solve(ctx context.Context, p Problem) (Solution, error) {
	s, err := newSearch(ctx, p)
	if err != nil {
		return Solution{}, err
	}
	return s.solve()
}

// Neighbours gives the points that are a step of one amount, or of two, from one of the grid.
func (p Problem) Neighbours(at []float64) ([][]float64, error) {
	s, err := newSearch(context.Background(), p)
	if err != nil {
		return nil, err
	}
	on := make([]int, len(at))
	for i, x := range at {
		on[i] = int(math.Round(x / s.grid[i].step))
	}
	var list [][]float64
	for _, next := range s.neighbours(on) {
		list = append(list, s.amounts(next))
	}
	return list, nil
}

// search is one search, with what it has calculated.
type search struct {
	ctx  context.Context
	p    Problem
	grid []steps
	seen map[string]Point
	of   *search // of which it is a part; nil: it is the whole
	most int     // how many points it may calculate
}

// mostRuns is how many points a walk may calculate, and the search for what is in the way as many
// again: our own bound, some seconds of a large drink.
const mostRuns = 2500

// spent reports whether no more points may be calculated.
func (s *search) spent() bool {
	if s.of != nil {
		return s.of.spent()
	}
	return len(s.seen) >= s.most
}

// steps is a variable as whole numbers of its step.
type steps struct {
	least, most, start int
	step               float64
}

// dust is what arithmetic leaves of nothing, of what a figure is made of.
const dust = 1e-9

func newSearch(ctx context.Context, p Problem) (*search, error) {
	s := &search{ctx: ctx, p: p, seen: map[string]Point{}, most: mostRuns}
	for _, v := range p.Variables {
		g := steps{
			least: int(math.Ceil(v.From/v.Step - dust)), most: int(math.Floor(v.To/v.Step + dust)),
			start: int(math.Round(v.Start / v.Step)), step: v.Step,
		}
		if g.least > g.most {
			return nil, ErrNoAmount
		}
		g.start = min(max(g.start, g.least), g.most)
		s.grid = append(s.grid, g)
	}
	return s, nil
}

// amounts gives a point of the grid in units.
func (s *search) amounts(at []int) []float64 {
	x := make([]float64, len(at))
	for i, k := range at {
		x[i] = float64(k) * s.grid[i].step
	}
	return x
}

// eval calculates a point of the grid, once.
func (s *search) eval(at []int) (Point, error) {
	key := keyOf(at)
	if pt, ok := s.seen[key]; ok {
		return pt, nil
	}
	if err := s.ctx.Err(); err != nil {
		return Point{}, err
	}
	pt, err := s.p.Eval(s.ctx, s.amounts(at))
	if err == nil {
		s.seen[key] = pt
	}
	return pt, err
}

func keyOf(at []int) string {
	key := make([]byte, 0, 4*len(at))
	for _, k := range at {
		key = append(key, byte(k), byte(k>>8), byte(k>>16), byte(k>>24))
	}
	return string(key)
}

// change is how far a point is from what is written: of each amount as a share of it.
func (s *search) change(at []int) float64 {
	sum := 0.0
	for i, k := range at {
		sum += s.weight(i) * math.Abs(float64(k-s.grid[i].start))
	}
	return sum
}

// weight is what one step of a variable counts as a change.
func (s *search) weight(i int) float64 {
	return 1 / math.Max(float64(s.grid[i].start), 1)
}

// met reports whether every target is.
func (pt Point) met() bool {
	for _, m := range pt.Margins {
		if !(m >= 0) {
			return false
		}
	}
	return true
}
