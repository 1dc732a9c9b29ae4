package optimise

import (
	"errors"
	"math"
)

// solve goes the way that the problem allows.
func (s *search) solve() (Solution, error) {
	found, err := s.find()
	if err == nil && !found.Met && !s.p.Brief {
		found.Conflict, err = s.conflict(found.Point)
	}
	found.Runs = len(s.seen)
	return found, err
}

// find looks for the best point.
func (s *search) find() (Solution, error) {
	at := make([]int, len(s.grid))
	for i, g := range s.grid {
		at[i] = g.start
	}
	if points(s.grid) <= fewPoints {
		return s.every(at)
	}
	l, err := s.lineAt(at, s.far(at))
	if err != nil {
		return Solution{}, err
	}
	if l.exact {
		if found, ok, err := s.straightOn(l); ok || err != nil {
			return found, err
		}
	}
	return s.walk(at, l)
}

// fewPoints is up to how many points all are calculated: our own bound.
const fewPoints = 300

// points counts those of the grid, as far as fewPoints.
func points(grid []steps) int {
	n := 1
	for _, g := range grid {
		if n *= g.most - g.least + 1; n > fewPoints {
			return n
		}
	}
	return n
}

// every calculates all points.
func (s *search) every(start []int) (Solution, error) {
	at := make([]int, len(s.grid))
	for i, g := range s.grid {
		at[i] = g.least
	}
	scales, err := s.scales(start)
	if err != nil {
		return Solution{}, err
	}
	best := candidate{}
	for {
		c, err := s.candidate(at, scales)
		if err != nil {
			return Solution{}, err
		}
		if best.at == nil || c.better(best) {
			best = c
		}
		i := 0
		for ; i < len(at); i++ {
			if at[i]++; at[i] <= s.grid[i].most {
				break
			}
			at[i] = s.grid[i].least
		}
		if i == len(at) {
			return s.solution(best, true), nil
		}
	}
}

// scales is what each margin is made of, so that misses can be compared.
func (s *search) scales(at []int) ([]float64, error) {
	l, err := s.lineAt(at, s.far(at))
	if err != nil {
		return nil, err
	}
	return l.scales(), nil
}

func (l *linear) scales() []float64 {
	scales := make([]float64, len(l.margins))
	for k, m := range l.margins {
		if scales[k] = m.scale; scales[k] == 0 {
			scales[k] = 1
		}
	}
	return scales
}

// candidate is a point with what it is worth.
type candidate struct {
	at     []int
	pt     Point
	missed float64
	change float64
}

func (s *search) candidate(at []int, scales []float64) (candidate, error) {
	pt, err := s.eval(at)
	if err != nil {
		return candidate{}, err
	}
	c := candidate{at: append([]int(nil), at...), pt: pt, change: s.change(at)}
	for k, m := range pt.Margins {
		if !(m >= 0) {
			c.missed += math.Max(-m/scales[k], math.SmallestNonzeroFloat64)
		}
	}
	if math.IsNaN(c.missed) {
		c.missed = math.Inf(1)
	}
	return c, nil
}

// better reports whether a point misses less, else has less of the goal, else changes less.
func (c candidate) better(than candidate) bool {
	near := func(a, b float64) bool {
		return a == b || math.Abs(a-b) <= dust*math.Min(math.Abs(a), math.Abs(b))
	}
	switch {
	case !near(c.missed, than.missed):
		return c.missed < than.missed
	case !math.IsNaN(c.pt.Goal) && !near(c.pt.Goal, than.pt.Goal):
		return c.pt.Goal < than.pt.Goal
	}
	return c.change < than.change && !near(c.change, than.change)
}

func (s *search) solution(c candidate, proven bool) Solution {
	return Solution{At: s.amounts(c.at), Point: c.pt, Met: c.pt.met(), Proven: proven}
}

// straightOn solves a problem whose figures are all linear; ok is false where the library cannot.
func (s *search) straightOn(l *linear) (found Solution, ok bool, err error) {
	margins := append([]line(nil), l.margins...)
	for range len(margins) + 1 {
		at, sure, err := s.leastOf(l, margins)
		if errors.Is(err, errNone) {
			return s.nearest(l, sure)
		}
		if err != nil || at == nil {
			return Solution{}, false, nil
		}
		c, err := s.candidate(at, l.scales())
		if err != nil || c.pt.met() {
			return s.solution(c, sure), true, err
		}
		for k, m := range c.pt.Margins { // at the limit to the last digit, and on the wrong side of it
			if !(m >= 0) {
				margins[k].is -= dust * margins[k].scale
			}
		}
	}
	return Solution{}, false, nil
}

// leastOf gives the point with the least goal, and of those the one with the least change.
func (s *search) leastOf(l *linear, margins []line) (at []int, sure bool, err error) {
	p := s.program(s.grid)
	p.holds(margins)
	if l.goal == nil {
		at, _, sure, err = p.best()
		return at, sure, err
	}
	g := *p
	scale := math.Max(l.goal.scale, math.SmallestNonzeroFloat64)
	g.up, g.down = make([]float64, len(s.grid)), make([]float64, len(s.grid))
	for i, by := range l.goal.slope {
		g.up[i], g.down[i] = by/scale, -by/scale
	}
	first, least, sure, err := g.best()
	if err != nil {
		return nil, sure, err
	}
	back := row{slope: make([]float64, len(s.grid)), is: least + dust}
	for i, by := range l.goal.slope {
		back.slope[i] = -by / scale
	}
	p.rows = append(p.rows, back)
	at, _, also, err := p.best()
	if errors.Is(err, errNone) {
		return first, sure, nil
	}
	return at, sure && also, err
}

// program asks for the least change within a box.
func (s *search) program(box []steps) *program {
	p := &program{box: box, up: make([]float64, len(box)), down: make([]float64, len(box))}
	for i := range box {
		p.up[i], p.down[i] = s.weight(i), s.weight(i)
	}
	return p
}

// holds asks that margins are not below zero.
func (p *program) holds(margins []line) {
	for _, m := range margins {
		p.rows = append(p.rows, row{slope: m.slope, is: m.is})
	}
}

// elastic lets margins be missed, at a price that is above all else.
func (p *program) elastic(margins []line, scales []float64) {
	const dear = 1e4
	for k, m := range margins {
		r := row{slope: make([]float64, len(m.slope)), is: m.is / scales[k], more: make([]float64, len(margins))}
		for i, by := range m.slope {
			r.slope[i] = by / scales[k]
		}
		r.more[k] = 1
		p.rows = append(p.rows, r)
		p.more = append(p.more, dear)
	}
}

// nearest finds, where no point meets every target, the one that misses least.
func (s *search) nearest(l *linear, sure bool) (Solution, bool, error) {
	p := s.program(s.grid)
	p.elastic(l.margins, l.scales())
	at, _, also, err := p.best()
	if err != nil {
		return Solution{}, false, nil
	}
	c, err := s.candidate(at, l.scales())
	return s.solution(c, sure && also), true, err
}
