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
	Sizes   []float64 // above zero, the same ones at every point: times one of them a margin may be a line that bends by itself
}

// Problem is what should be met, and what may change.
type Problem struct {
	Variables []Variable
	Eval      func(ctx context.Context, at []float64) (Point, error) // the same for the same amounts
	Scales    []float64                                              // in what a miss of each target is counted; nil, or 0: by what its margin moves
	Most      int                                                    // how many points may be calculated; 0: 2,500
	Brief     bool                                                   // where not all is met nobody asks for the nearest, or what is in the way
}

// Solution is the best point found.
type Solution struct {
	At     []float64
	Point  Point
	Met    bool // every target is
	Proven bool // no other point of the grid is better: every margin is linear, and all were searched
	Beside bool // no point a step of one amount away, or of two, is better: all were asked
	None   bool // no point of the grid meets every target: the search was whole
	Runs   int  // of Eval

	Conflict *Conflict // nil if every target is met
}

// ErrNoAmount says that an amount has no multiple of its step between its ends.
var ErrNoAmount = errors.New("no step of the scale between the ends")

// Solve finds, of the points of the grid at which every target is met, the one with the least
// goal, and of those the one with the least change; if there is none, of the points that miss fewest
// targets the one that misses them least, and which targets are in each other's way.
func Solve(ctx context.Context, p Problem) (Solution, error) {
	s, err := newSearch(ctx, p)
	if err != nil {
		return Solution{}, err
	}
	return s.solve()
}

// Neighbours gives the points that are a step of one amount from one of the grid, and of few amounts
// those that are a step of two.
func (p Problem) Neighbours(at []float64) ([][]float64, error) {
	s, err := newSearch(context.Background(), p)
	if err != nil {
		return nil, err
	}
	on := s.on(at)
	var list [][]float64
	for _, next := range s.neighbours(on) {
		list = append(list, s.amounts(next))
	}
	return list, nil
}

// search is one search, with what it has calculated.
type search struct {
	ctx context.Context
	p   Problem
	grid
	seen  map[string]Point
	of    *search // of which it is a part; nil: it is the whole
	most  int     // how many points it may calculate
	given targets // that are given up, and missed as little as may be; nil: none
	bears float64 // by how much what is given up may be missed as if it were not
	from  []int   // where else a walk begins; nil: nowhere
	sizes sizes   // nil: not yet known
}

// mostRuns is how many points a walk may calculate, and the search for the fewest misses and that for
// what is in the way a third of it each: our own bound, some seconds of a drink of ten lines.
const mostRuns = 2500

// more lets a search calculate some more points.
func (s *search) more() {
	const after = 3 // what comes after the search has a third of its points
	most := s.p.Most
	if most == 0 {
		most = mostRuns
	}
	if len(s.seen) > 0 {
		most /= after
	}
	s.most = len(s.seen) + most
}

// spent reports whether no more points may be calculated.
func (s *search) spent() bool {
	if s.of != nil {
		return s.of.spent()
	}
	return len(s.seen) >= s.most
}

// short reports whether lines can no more be drawn.
func (s *search) short() bool {
	if s.of != nil {
		return s.of.short()
	}
	return len(s.seen)+len(s.grid) >= s.most
}

// dust is what arithmetic leaves of nothing, of what a figure is made of.
const dust = 1e-9

func newSearch(ctx context.Context, p Problem) (*search, error) {
	s := &search{ctx: ctx, p: p, seen: map[string]Point{}}
	s.more()
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

// met reports whether every target is.
func (pt Point) met() bool {
	for _, m := range pt.Margins {
		if !(m >= 0) {
			return false
		}
	}
	return true
}
