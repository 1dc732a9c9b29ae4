package optimise

import (
	"errors"
	"slices"
)

// walk finds a good point of a problem that bends: again and again it draws lines through where it
// stands, solves them within reach, and goes there if it is better; else it reaches half as far
// (sequential linear programming with a trust region: Fletcher and Sainz de la Maza 1989, Math.
// Program. 43:235). Lines are drawn anew where the old ones led nowhere. Then neighbours are asked.
// Where it does not come to all that is to be met it begins elsewhere too.
func (s *search) walk(start []int, l *linear) (Solution, error) {
	scales := s.scales(l)
	best, beside, err := s.walkFrom(start, l, scales)
	if err != nil {
		return Solution{}, err
	}
	starts := [][]int{}
	if s.from != nil {
		starts = append(starts, s.from)
	}
	for _, share := range []float64{0.5, 0, 1} { // it may stand in a pocket
		at := make([]int, len(start))
		for i, g := range s.grid {
			at[i] = g.least + int(share*float64(g.most-g.least))
		}
		starts = append(starts, at)
	}
	for _, at := range starts {
		if best.missed == 0 || s.spent() {
			break
		}
		c, all, err := s.walkFrom(at, nil, scales)
		if err != nil {
			return Solution{}, err
		}
		if c.better(best) {
			best, beside = c, all
		}
	}
	found := s.solution(best, false)
	found.Beside = beside
	return found, nil
}

// walkFrom walks from a point, with lines that have been drawn through it; nil: none have.
func (s *search) walkFrom(at []int, l *linear, scales []float64) (best candidate, beside bool, err error) {
	if best, err = s.candidate(at, scales); err != nil {
		return best, false, err
	}
	reach, drawn := 1.0, 0.0 // how near lines were drawn last; 0: at the far ends
	for rounds := 0; rounds < mostRounds && reaches(s.grid, reach) && !s.spent(); rounds++ {
		if l == nil {
			if s.short() {
				break
			}
			if l, err = s.lineAt(best.at, s.within(best.at, reach)); err != nil {
				return best, false, err
			}
			drawn = reach
		}
		c, stays, err := s.stride(l, best, reach, scales)
		if err != nil {
			return best, false, err
		}
		if c.better(best) {
			best, l = c, l.moved(c.at, c.pt, s.sizes)
			reach = min(2*reach, 1)
			continue
		}
		if fresh := drawn == reach && slices.Equal(l.at, best.at); fresh {
			reach /= 2
			if stays { // the lines lead nowhere: only finer ones can tell more
				reach /= finer
			}
		}
		l = nil
	}
	return s.settle(best, scales)
}

// stride goes where lines lead within reach. Where a margin is less there than its line said, the line
// is lowered by as much and solved again (a correction of the second order: Fletcher 1982, Lect. Notes
// Math. 912:85). stays is true where the lines lead nowhere.
func (s *search) stride(l *linear, best candidate, reach float64, scales []float64) (c candidate, stays bool, err error) {
	c = best
	for try := range corrections {
		next, err := s.stepOn(l, best.at, reach, scales)
		if err != nil || next == nil {
			return c, try == 0, err
		}
		if c, err = s.candidate(next, scales); err != nil || c.better(best) {
			return c, false, err
		}
		l = l.lowered(next, c.pt, s.sizes)
	}
	return c, false, nil
}

// lowered gives lines that go as low as their margins where they were less.
func (l *linear) lowered(at []int, pt Point, sizes []int) *linear {
	next := *l
	next.margins = slices.Clone(l.margins)
	for k, m := range l.margins {
		if off := m.of(l.at, at) - timesSize(k, sizes[k])(pt); off > 0 && finite(off) {
			next.margins[k].is -= off
		}
	}
	return &next
}

// mostRounds ends a walk, and lines are finer by so much: our own bounds.
const (
	mostRounds = 40
	finer      = 8
	// corrections are how often lines are lowered before others are drawn.
	corrections = 4
)

// reaches tells whether a share of the ranges is still a step of any amount.
func reaches(grid []steps, share float64) bool {
	for _, g := range grid {
		if share*float64(g.most-g.least) >= 1 {
			return true
		}
	}
	return false
}

// stepOn solves the lines within reach; nil where it stays where it is.
func (s *search) stepOn(l *linear, at []int, share float64, scales []float64) ([]int, error) {
	box := make([]steps, len(at))
	for i, g := range s.grid {
		by := max(1, int(share*float64(g.most-g.least)))
		box[i] = steps{least: max(g.least, at[i]-by), most: min(g.most, at[i]+by), start: g.start}
	}
	p := s.program(box)
	if l.goal != nil {
		const little = 1e-3
		for i, by := range l.goal.slope {
			p.up[i], p.down[i] = little*p.up[i]+by/goalScale(l), little*p.down[i]-by/goalScale(l)
		}
	}
	var hard, soft []int
	for k := range l.margins {
		if s.given.has(k) {
			soft = append(soft, k)
		} else {
			hard = append(hard, k)
		}
	}
	p.elastic(l.at, l.margins, scales, soft, 0)
	p.bears(s.bears)
	firm := *p
	firm.holds(l.at, l.margins, hard)
	next, _, _, err := firm.bestOf(nodesOfWalk)
	if errors.Is(err, errNone) {
		p.elastic(l.at, l.margins, scales, hard, dear*dear)
		next, _, _, err = p.bestOf(nodesOfWalk)
	}
	if errors.Is(err, errNone) || err == nil && keyOf(next) == keyOf(at) {
		return nil, nil
	}
	return next, err
}

func goalScale(l *linear) float64 {
	if l.goal.scale == 0 {
		return 1
	}
	return l.goal.scale
}

// settle asks every neighbour, and those that trade a step of one amount for a step of another,
// until none is better; beside is false where some have not been asked.
func (s *search) settle(best candidate, scales []float64) (_ candidate, beside bool, err error) {
	if len(best.at) > mostPaired { // lines drawn a step apart have told of them
		return best, false, nil
	}
	for moved := true; moved; {
		moved = false
		for _, next := range s.neighbours(best.at) {
			c, err := s.candidate(next, scales)
			if err != nil {
				return best, false, err
			}
			if s.spent() {
				return best, false, nil
			}
			if c.better(best) {
				from := best.at
				best, moved = c, true
				if best, err = s.onward(best, from, scales); err != nil {
					return best, false, err
				}
				break
			}
		}
	}
	return best, true, nil
}

// onward goes on the way that a step went, twice as far each time, as long as it gets better.
func (s *search) onward(best candidate, from []int, scales []float64) (candidate, error) {
	way := make([]int, len(from))
	for i, k := range best.at {
		way[i] = k - from[i]
	}
	for by := 2; !s.spent(); by *= 2 {
		next := append([]int(nil), best.at...)
		for i, g := range s.grid {
			if next[i] += by * way[i]; next[i] < g.least || next[i] > g.most {
				return best, nil
			}
		}
		c, err := s.candidate(next, scales)
		if err != nil || !c.better(best) {
			return best, err
		}
		best = c
	}
	return best, nil
}
