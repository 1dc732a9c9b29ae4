package optimise

import (
	"context"
	"errors"
	"math"
)

// Room is how much more than the least change is spent on surety: a share of it, and no less than the
// least.
type Room struct{ Share, Least float64 }

// Surer finds, near a point that meets every target, one at which they hold more surely: of the points
// that change more by no more than the room, and bring the goal as far, the one with the greatest product of chances. spreads are
// the standard deviations of the margins; of one that has none nothing is asked but that it is met. A
// margin of t deviations holds with a chance of Φ(t), as if margins were normal and none hung on another;
// −ln Φ is bounded by its tangents, so that lines are enough. Whether a point is surer indeed whoever
// has the draws must ask. It gives the point itself where there is none.
func Surer(ctx context.Context, p Problem, at, spreads []float64, room Room) ([]float64, error) {
	s, err := newSearch(ctx, p)
	if err != nil {
		return nil, err
	}
	on := s.on(at)
	l, err := s.lines(on)
	if err != nil {
		return nil, err
	}
	if !l.exact && len(on) <= mostPaired { // those of nearby are nearer to the truth
		if l, err = s.lineAt(on, s.within(on, 1)); err != nil {
			return nil, err
		}
	}
	least := s.change(on)
	for share := 1.0; share >= leastRoom; share /= 2 {
		next, err := s.surest(l, spreads, least+share*max(room.Share*least, room.Least))
		if err != nil || next == nil {
			return at, err
		}
		pt, err := s.eval(next)
		if err != nil || pt.met() && !(pt.Goal > l.goalIs()+dust*math.Abs(l.goalIs())) {
			return s.amounts(next), err
		}
	}
	return at, nil
}

// goalIs is the goal where lines were drawn; no number if there is none.
func (l *linear) goalIs() float64 {
	if l.goal == nil {
		return math.NaN()
	}
	return l.goal.is
}

// leastRoom is the least part of the room that is tried where lines lead astray: our own bound.
const leastRoom = 0.1

// surest solves for the greatest product of chances within a change; nil if nothing is found.
func (s *search) surest(l *linear, spreads []float64, most float64) ([]int, error) {
	p := s.program(s.grid)
	n := len(s.grid)
	const worth = 0.02 // a change of a whole amount has to bring so much of ln Φ
	weights := append([]float64(nil), p.up...)
	for i := range p.up {
		p.up[i], p.down[i] = worth*p.up[i], worth*p.down[i]
	}
	p.rows = append(p.rows, row{slope: make([]float64, n), spent: weights, is: most + dust})
	p.holds(l.at, l.margins, all(len(l.margins)))
	if l.goal != nil { // no less of the goal is got
		r := row{slope: make([]float64, n), is: l.goal.is - p.from(l.at, *l.goal) + dust*l.goal.scale}
		for i, x := range l.goal.slope {
			r.slope[i] = -x
		}
		p.rows = append(p.rows, r)
	}
	for k, m := range l.margins {
		if !(spreads[k] > 0) || !finite(spreads[k]) {
			continue
		}
		further := len(p.more)
		p.more = append(p.more, 1)
		one := spreads[k] * m.size
		for _, t := range tangents {
			from, by := chanceAt(t)
			r := row{slope: make([]float64, n), more: make([]float64, further+1), is: from + by*(p.from(l.at, m)/one-t)}
			for i, x := range m.slope {
				r.slope[i] = by * x / one
			}
			r.more[further] = 1
			p.rows = append(p.rows, r)
		}
	}
	next, _, _, err := p.bestOf(nodesOfWalk)
	if errors.Is(err, errNone) {
		return nil, nil
	}
	return next, err
}

// tangents are the deviations at which −ln Φ is touched: beyond the last a target holds in 99 of 100.
var tangents = []float64{0, 0.5, 1, 1.5, 2, 2.5}

// chanceAt gives ln Φ and how steeply it grows, at so many standard deviations.
func chanceAt(t float64) (ln, by float64) {
	chance := math.Erfc(-t/math.Sqrt2) / 2
	density := math.Exp(-t*t/2) / math.Sqrt(2*math.Pi)
	return math.Log(chance), density / chance
}
