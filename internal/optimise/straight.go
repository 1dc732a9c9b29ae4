package optimise

import (
	"errors"
	"math"
)

// straightOn solves a problem whose figures are all linear; ok is false where the simplex cannot.
func (s *search) straightOn(l *linear) (found Solution, ok bool, err error) {
	scales := s.scales(l)
	margins := append([]line(nil), l.margins...)
	for range len(margins) + 1 {
		at, sure, err := s.leastOf(l, margins, scales)
		if errors.Is(err, errNone) {
			if s.given != nil {
				return Solution{Proven: sure}, true, nil
			}
			return s.nearest(l, sure)
		}
		if err != nil || at == nil {
			return Solution{}, false, nil
		}
		c, err := s.candidate(at, scales)
		if err != nil || c.missed == 0 {
			return s.solution(c, sure), true, err
		}
		for k, m := range c.pt.Margins { // at the limit to the last digit, and on the wrong side of it
			if !(m >= 0) && !s.given.has(k) {
				margins[k].is -= dust * margins[k].scale
			}
		}
	}
	return Solution{}, false, nil
}

// errBends says that a miss is no line, though its limit is one.
var errBends = errors.New("a miss bends")

// leastOf gives the point that misses least of what is given up, of those the one with the least goal,
// and of those the one with the least change. What is least is kept as a row for what comes after it.
func (s *search) leastOf(l *linear, margins []line, scales []float64) (at []int, sure bool, err error) {
	p := s.program(s.grid)
	var hard, soft []int
	for k := range margins {
		if s.given.has(k) {
			soft = append(soft, k)
		} else {
			hard = append(hard, k)
		}
	}
	if !s.sizes.plain(soft) {
		return nil, false, errBends
	}
	p.holds(l.at, margins, hard)
	p.elastic(l.at, margins, scales, soft, 0)
	change := *p
	sure = true
	least := func(up, down, more []float64, times float64) error {
		p.up, p.down, p.more = up, down, more
		next, value, all, err := p.best()
		sure = sure && all
		if err != nil {
			return err
		}
		at = next
		back := row{slope: make([]float64, len(s.grid)), more: make([]float64, len(more)), is: times*value + dust}
		for i := range up {
			back.slope[i] = -up[i] // down is its contrary
		}
		for i, x := range more {
			back.more[i] = -x
		}
		p.rows = append(p.rows, back)
		return nil
	}
	still := make([]float64, len(s.grid))
	if len(soft) > 0 {
		ones := make([]float64, len(soft))
		for i := range ones {
			ones[i] = 1
		}
		if err := least(still, still, ones, alike); err != nil {
			return nil, sure, err
		}
	}
	if l.goal != nil {
		up, down := make([]float64, len(s.grid)), make([]float64, len(s.grid))
		for i, by := range l.goal.slope {
			up[i] = by / math.Max(l.goal.scale, math.SmallestNonzeroFloat64)
			down[i] = -up[i]
		}
		if err := least(up, down, make([]float64, len(soft)), 1); err != nil {
			return at, sure, orNone(at, err)
		}
	}
	first := at
	p.up, p.down, p.more = change.up, change.down, make([]float64, len(soft))
	at, _, all, err := p.best()
	if err != nil {
		return first, sure, orNone(first, err)
	}
	return at, sure && all, nil
}

// orNone drops what was wrong with a later search, where an earlier one has a point.
func orNone(at []int, err error) error {
	if at != nil && errors.Is(err, errNone) {
		return nil
	}
	return err
}

// nearest finds, where no point meets every target, the one that misses least; ok is false where a
// miss is no line, though its limit is one.
func (s *search) nearest(l *linear, sure bool) (found Solution, ok bool, err error) {
	if !s.sizes.plain(all(len(l.margins))) {
		return Solution{None: sure}, false, nil
	}
	scales := s.scales(l)
	p := s.program(s.grid)
	p.elastic(l.at, l.margins, scales, all(len(l.margins)), dear)
	at, _, also, err := p.best()
	if err != nil {
		return Solution{}, false, nil
	}
	c, err := s.candidate(at, scales)
	found = s.solution(c, sure && also)
	found.None = sure
	return found, true, err
}
