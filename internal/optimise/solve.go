package optimise

import (
	"cmp"
	"errors"
	"math"
	"slices"
)

// solve goes the way that the problem allows.
func (s *search) solve() (Solution, error) {
	found, err := s.find()
	if err == nil && !found.Met {
		if found, err = s.fewest(found); err != nil {
			return found, err
		}
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

// start is what is written, on the grid.
func (s *search) start() []int {
	at := make([]int, len(s.grid))
	for i, g := range s.grid {
		at[i] = g.start
	}
	return at
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

// scale is in what a miss of a target is counted; 0 where nobody says.
func (p Problem) scale(k int) float64 {
	if k < len(p.Scales) && p.Scales[k] > 0 && finite(p.Scales[k]) {
		return p.Scales[k]
	}
	return 0
}

// scales is in what misses are counted, so that they can be compared.
func (s *search) scales(l *linear) []float64 {
	scales := make([]float64, len(l.margins))
	for k := range scales {
		if scales[k] = s.p.scale(k); scales[k] == 0 {
			scales[k] = l.moves[k]
		}
		if scales[k] == 0 {
			scales[k] = 1
		}
	}
	return scales
}

// candidate is a point with what it is worth.
type candidate struct {
	at     []int
	pt     Point
	misses int     // how many targets
	missed float64 // by how much those that are to be met
	given  float64 // and those that are given up
	change float64
}

func (s *search) candidate(at []int, scales []float64) (candidate, error) {
	pt, err := s.eval(at)
	if err != nil {
		return candidate{}, err
	}
	c := candidate{at: append([]int(nil), at...), pt: pt, change: s.change(at)}
	for k, m := range pt.Margins {
		if m >= 0 {
			continue
		}
		c.misses++
		by := math.Max(-m/scales[k], math.SmallestNonzeroFloat64)
		if math.IsNaN(by) {
			by = math.Inf(1)
		}
		if s.isGiven(k) {
			c.given += by
		} else {
			c.missed += by
		}
	}
	c.given = max(c.given-s.bears, 0)
	return c, nil
}

func (s *search) isGiven(k int) bool { return s.given != nil && s.given[k] }

// better reports whether a point misses less of what is to be met, else of what is given up, else has
// less of the goal, else changes less.
func (c candidate) better(than candidate) bool {
	near := func(a, b float64) bool {
		return a == b || math.Abs(a-b) <= dust*math.Min(math.Abs(a), math.Abs(b))
	}
	switch {
	case !near(c.missed, than.missed):
		return c.missed < than.missed
	case !near(c.given, than.given):
		return c.given < than.given
	case !math.IsNaN(c.pt.Goal) && !near(c.pt.Goal, than.pt.Goal):
		return c.pt.Goal < than.pt.Goal
	}
	return c.change < than.change && !near(c.change, than.change)
}

func (s *search) solution(c candidate, proven bool) Solution {
	return Solution{At: s.amounts(c.at), Point: c.pt, Met: c.pt.met(), Proven: proven, Beside: proven}
}

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
			if !(m >= 0) {
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
		if s.isGiven(k) {
			soft = append(soft, k)
		} else {
			hard = append(hard, k)
		}
	}
	if !s.plain(soft) {
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

// program asks for the least change within a box.
func (s *search) program(box []steps) *program {
	p := &program{box: box, up: make([]float64, len(box)), down: make([]float64, len(box))}
	for i := range box {
		p.up[i], p.down[i] = s.weight(i), s.weight(i)
	}
	return p
}

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

// nearest finds, where no point meets every target, the one that misses least; ok is false where a
// miss is no line, though its limit is one.
func (s *search) nearest(l *linear, sure bool) (found Solution, ok bool, err error) {
	if !s.plain(all(len(l.margins))) {
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

// plain reports whether margins are lines by themselves.
func (s *search) plain(which []int) bool {
	return !slices.ContainsFunc(which, func(k int) bool { return s.sizes[k] != none })
}

func all(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}
