package optimise

import (
	"cmp"
	"slices"
)

// solve goes the way that the problem allows.
func (s *search) solve() (Solution, error) {
	found, err := s.find()
	if err == nil && !found.Met && !s.p.Brief {
		if found, err = s.fewest(found); err != nil {
			return found, err
		}
	}
	if err == nil && !found.Met && !s.p.Brief {
		found.Conflict, err = s.conflict(found.Point)
	}
	found.Runs = len(s.seen)
	return found, err
}

// find looks for the best point.
func (s *search) find() (Solution, error) {
	at := s.start()
	if points(s.grid) <= fewPoints {
		return s.every(at)
	}
	l, err := s.lines(at)
	if err != nil {
		return Solution{}, err
	}
	impossible := false
	if l.exact {
		found, ok, err := s.straightOn(l)
		if impossible = found.None; ok || err != nil {
			return found, err
		}
	}
	found, err := s.walk(at, l)
	found.None = impossible
	return found, err
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
	l, err := s.lineAt(start, s.far(start))
	if err != nil {
		return Solution{}, err
	}
	scales := s.scales(l)
	var list []candidate
	for more := true; more; {
		c, err := s.candidate(at, scales)
		if err != nil {
			return Solution{}, err
		}
		list = append(list, c)
		more = false
		for i := 0; i < len(at) && !more; i++ {
			if more = at[i] < s.grid[i].most; more {
				at[i]++
			} else {
				at[i] = s.grid[i].least
			}
		}
	}
	found := s.solution(bestOf(list), true)
	found.None = !found.Met
	return found, nil
}

// bestOf is the best of all points: of those that miss fewest the one that misses least, or hardly more
// and is better for it.
func bestOf(list []candidate) candidate {
	least := func(a, b candidate) int {
		return cmp.Or(cmp.Compare(a.misses, b.misses), cmp.Compare(a.missed, b.missed))
	}
	first := slices.MinFunc(list, least)
	best := first
	for _, c := range list {
		if c.misses == first.misses && c.missed <= alike*first.missed {
			c.missed = first.missed
			if c.better(best) {
				best = c
			}
		}
	}
	return best
}

// alike is how many times the least miss is no worse than that: our own bound. Nobody moves a drink for
// the hundredth part of a miss.
const alike = 1.01

// from gives a line that was drawn elsewhere at the start of the boxes.
func (p *program) from(at []int, l line) float64 {
	start := make([]int, len(p.box))
	for i, b := range p.box {
		start[i] = b.start
	}
	return l.of(at, start)
}

// holds asks that margins, whose lines were drawn at a point, are not below zero.
func (p *program) holds(at []int, margins []line, which []int) {
	for _, k := range which {
		p.rows = append(p.rows, row{slope: margins[k].slope, is: p.from(at, margins[k])})
	}
}

// elastic lets margins be missed, at a price.
func (p *program) elastic(at []int, margins []line, scales []float64, which []int, price float64) {
	have := len(p.more)
	for n, k := range which {
		m, scale := margins[k], scales[k]*margins[k].size
		r := row{slope: make([]float64, len(m.slope)), is: p.from(at, m) / scale, more: make([]float64, have+len(which))}
		for i, by := range m.slope {
			r.slope[i] = by / scale
		}
		r.more[have+n] = 1
		p.rows = append(p.rows, r)
	}
	for range which {
		p.more = append(p.more, price)
	}
}

// bears takes the misses of a program for none up to a sum, and lets them be dear beyond it.
func (p *program) bears(sum float64) {
	n := len(p.more)
	if n == 0 {
		return
	}
	r := row{slope: make([]float64, len(p.box)), more: make([]float64, n+1), is: sum}
	for i := range n {
		r.more[i] = -1
	}
	r.more[n] = 1
	p.rows, p.more = append(p.rows, r), append(p.more, dear)
}

// dear is a price above all else.
const dear = 1e4

// sizes tells by margin with which size it bends least.
type sizes []int

// plain reports whether margins are lines by themselves.
func (z sizes) plain(which []int) bool {
	return !slices.ContainsFunc(which, func(k int) bool { return z[k] != none })
}

func all(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}
