package invent

import (
	"cmp"
	"math"
	"slices"

	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// Unmet is a target that the drink as written misses, or holds too seldom.
type Unmet struct {
	Target string
	Can    bool       // some foods of the tables could meet it
	By     *food.Food // what does most for it; nil: nothing does anything
	Holds  float64    // in what share of the draws it holds as written, too few; NaN: it is missed
}

// unmet says of each target that the drink as written misses whether any foods could meet it, and of each that
// it holds too seldom whether any could do something for it.
func (s *search) unmet() {
	foods := int(unit.LimitOf("foods of an invention", "").High)
	for k, c := range s.conditions {
		base := s.pool.base[k][0]
		u := Unmet{Target: s.textOf(c), Holds: math.NaN()}
		met := s.pool.reaches(k, base, math.Abs(base))
		if met {
			if u.Holds = s.pool.share(k); u.Holds >= s.pool.enough {
				continue
			}
		}
		order := s.pool.all()
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(s.pool.list[b].best[k], s.pool.list[a].best[k]) })
		x := base
		for n, i := range order[:min(foods, len(order))] {
			best := s.pool.list[i].best[k]
			if best <= 0 {
				break
			}
			if x += best; n == 0 {
				u.By = s.liquids[i].food
			}
		}
		if u.Can = s.pool.reaches(k, x, math.Abs(base)); met && u.By != nil {
			continue // what it is short of draws is a matter of how much is put in
		}
		u.Can = u.Can && u.By != nil
		s.res.Unmet = append(s.res.Unmet, u)
	}
}

// share is in how many of the draws a condition holds as the drink is written.
func (p *pool) share(k int) float64 {
	holds := 0
	for _, x := range p.base[k][1:] {
		if x >= p.least(k) {
			holds++
		}
	}
	return float64(holds) / float64(p.drawsOf())
}

// stops finds the conditions that the drink holds as it is written and that keep what is missed from being met:
// without one of them there would be designs.
func (s *search) stops() error {
	if len(s.res.Unmet) == 0 || slices.ContainsFunc(s.res.Unmet, func(u Unmet) bool { return !u.Can }) {
		return nil
	}
	for k, c := range s.conditions {
		if base := s.pool.base[k][0]; !s.pool.reaches(k, base, math.Abs(base)) {
			continue
		}
		free, most := s.pool.without(k), simple
		if c.aim < 0 { // room is what many small things need
			most = largest
		}
		for size := 1; size <= most; size++ {
			list, _, err := free.answers(size)
			if err != nil {
				return err
			}
			if len(list) == 0 {
				continue
			}
			if name := s.textOf(c); !slices.Contains(s.res.Stops, name) {
				s.res.Stops = append(s.res.Stops, name)
			}
			break
		}
	}
	return nil
}

// simple is of how many foods a set is by which it is seen which target stops a search.
const simple = 2

// without is a pool with one condition less.
func (p *pool) without(k int) *pool {
	cut := func(list []float64) []float64 { return slices.Delete(slices.Clone(list), k, k+1) }
	free := *p
	free.base = slices.Delete(slices.Clone(p.base), k, k+1)
	free.strict = slices.Delete(slices.Clone(p.strict), k, k+1)
	free.list = slices.Clone(p.list)
	for i := range free.list {
		c := &free.list[i]
		drawn := c.drawn
		c.centre, c.helped = cut(c.centre), cut(c.helped)
		c.drawn = func() (columns, error) {
			all, err := drawn()
			if err != nil {
				return columns{}, err
			}
			less := func(list [][]float64) [][]float64 { return slices.Delete(slices.Clone(list), k, k+1) }
			return columns{hurt: less(all.hurt), help: less(all.help), hand: all.hand}, nil
		}
	}
	free.prepare()
	return &free
}
