package optimise

import (
	"math"
	"slices"
)

// linear is what a problem is near a point: its margins and its goal, by the steps of each amount.
type linear struct {
	at      []int
	margins []line
	goal    *line // nil: there is none
	exact   bool  // it is so everywhere
}

// line is a figure that grows evenly with each amount.
type line struct {
	is    float64
	slope []float64 // by a step
	scale float64   // what it is made of
}

func (l line) of(from, at []int) float64 {
	v := l.is
	for i, k := range at {
		v += l.slope[i] * float64(k-from[i])
	}
	return v
}

// lineAt draws the lines of a problem through a point, with strides of some steps, and asks at
// two other points whether they hold there.
func (s *search) lineAt(at []int, stride func(i int) int) (*linear, error) {
	base, err := s.eval(at)
	if err != nil {
		return nil, err
	}
	l := &linear{at: at, margins: make([]line, len(base.Margins))}
	figures := make([]*line, len(l.margins))
	for k := range l.margins {
		l.margins[k] = line{is: base.Margins[k], slope: make([]float64, len(at))}
		figures[k] = &l.margins[k]
	}
	if !math.IsNaN(base.Goal) {
		l.goal = &line{is: base.Goal, slope: make([]float64, len(at))}
		figures = append(figures, l.goal)
	}
	for _, f := range figures {
		if finite(f.is) {
			f.scale = math.Abs(f.is)
		}
	}
	for i := range at {
		by, pt, err := s.aside(at, i, stride(i))
		if err != nil {
			return nil, err
		}
		for k, f := range figures {
			moved := figureOf(pt, k) - f.is
			if by == 0 || !finite(moved) {
				continue
			}
			f.slope[i] = moved / float64(by)
			f.scale = max(f.scale, math.Abs(moved))
		}
	}
	l.exact, err = s.straight(l, figures)
	return l, err
}

// aside asks a point some steps away by one amount, nearer as long as nothing of it is a number: what
// cannot be made tells nothing of the slope. by is 0 where there is none.
func (s *search) aside(at []int, i, stride int) (by int, pt Point, err error) {
	for by = stride; by != 0; by /= 2 {
		other := append([]int(nil), at...)
		other[i] += by
		if pt, err = s.eval(other); err != nil || pt.told() {
			return by, pt, err
		}
	}
	return 0, pt, nil
}

// told reports whether anything of a point is a number.
func (pt Point) told() bool {
	return finite(pt.Goal) || slices.ContainsFunc(pt.Margins, finite)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

func figureOf(pt Point, k int) float64 {
	if k < len(pt.Margins) {
		return pt.Margins[k]
	}
	return pt.Goal
}

// straight asks whether lines hold at the farthest corner, half of the way there, and where some
// amounts are low and others high.
func (s *search) straight(l *linear, figures []*line) (bool, error) {
	const bend = 1e-7 // of the scale: what a linear figure leaves
	far := s.far(l.at)
	for _, to := range []func(i int) float64{
		func(i int) float64 { return float64(l.at[i] + far(i)) },
		func(i int) float64 { return float64(l.at[i]) + float64(far(i))/2 },
		func(i int) float64 {
			g := s.grid[i]
			const low, high = 0.19, 0.63
			return float64(g.least) + []float64{low, high}[i%2]*float64(g.most-g.least)
		},
	} {
		other := make([]int, len(l.at))
		for i := range other {
			other[i] = int(math.Round(to(i)))
		}
		pt, err := s.eval(other)
		if err != nil {
			return false, err
		}
		for k, f := range figures {
			is := figureOf(pt, k)
			if !(math.Abs(f.of(l.at, other)-is) <= bend*math.Max(f.scale, math.Abs(is))) {
				return false, nil
			}
		}
	}
	return true, nil
}

// far is the stride to the farther end of an amount.
func (s *search) far(at []int) func(i int) int {
	return func(i int) int {
		g := s.grid[i]
		if up := g.most - at[i]; up >= at[i]-g.least {
			return up
		}
		return g.least - at[i]
	}
}

// near is the stride of one step, inwards at an end.
func (s *search) near(at []int) func(i int) int {
	return func(i int) int {
		g := s.grid[i]
		switch {
		case at[i] < g.most:
			return 1
		case at[i] > g.least:
			return -1
		}
		return 0
	}
}
