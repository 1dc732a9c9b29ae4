package optimise

import "math"

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
		if s.given.has(k) {
			c.given += by
		} else {
			c.missed += by
		}
	}
	c.given = max(c.given-s.bears, 0)
	return c, nil
}

// targets marks some of them.
type targets []bool

func (g targets) has(k int) bool { return g != nil && g[k] }

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
