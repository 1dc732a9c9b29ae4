package optimise

import (
	"math"
	"slices"
)

// linear is what a problem is near a point: its margins and its goal, by the steps of each amount.
type linear struct {
	at      []int
	margins []line
	goal    *line     // nil: there is none
	moves   []float64 // by what each margin moves, or what it is if that is more
	exact   bool      // it is so everywhere
}

// line is a figure that grows evenly with each amount; of a margin it may be as many times the
// margin as a size of the point is.
type line struct {
	is    float64
	slope []float64 // by a step
	scale float64   // what it is made of
	size  float64   // at the point: what the margin was multiplied by
}

func (l line) of(from, at []int) float64 {
	v := l.is
	for i, k := range at {
		v += l.slope[i] * float64(k-from[i])
	}
	return v
}

// drawn are points through which lines are drawn.
type drawn struct {
	at    []int
	base  Point
	aside []aside
}

// aside is a point some steps away by one amount; by is 0 where there is none.
type aside struct {
	by int
	pt Point
}

// draw asks the points for lines through one, with strides of some steps.
func (s *search) draw(at []int, stride func(i int) int) (*drawn, error) {
	base, err := s.eval(at)
	if err != nil {
		return nil, err
	}
	d := &drawn{at: at, base: base, aside: make([]aside, len(at))}
	for i := range at {
		if d.aside[i], err = s.aside(at, i, stride(i)); err != nil {
			return nil, err
		}
	}
	return d, nil
}

// line draws the line of a figure of the points.
func (d *drawn) line(of func(Point) float64) line {
	f := line{is: of(d.base), slope: make([]float64, len(d.at)), size: 1}
	if finite(f.is) {
		f.scale = math.Abs(f.is)
	}
	for i, a := range d.aside {
		if a.by == 0 {
			continue
		}
		if moved := of(a.pt) - f.is; finite(moved) {
			f.slope[i] = moved / float64(a.by)
			f.scale = max(f.scale, math.Abs(moved))
		}
	}
	return f
}

// timesSize gives a margin of a point times one of its sizes; by itself if that is none.
func timesSize(k, size int) func(Point) float64 {
	return func(pt Point) float64 {
		switch {
		case size < 0:
			return pt.Margins[k]
		case size < len(pt.Sizes):
			return pt.Margins[k] * pt.Sizes[size]
		}
		return math.NaN()
	}
}

func goalOf(pt Point) float64 { return pt.Goal }

// lineAt draws the lines of a problem through a point, each margin times the size with which it has
// been found to bend least.
func (s *search) lineAt(at []int, stride func(i int) int) (*linear, error) {
	d, err := s.draw(at, stride)
	if err != nil {
		return nil, err
	}
	l := &linear{at: at, margins: make([]line, len(d.base.Margins)), moves: make([]float64, len(d.base.Margins))}
	for k := range l.margins {
		size := none
		if s.sizes != nil {
			size = s.sizes[k]
		}
		l.margins[k] = d.margin(k, size)
		l.moves[k] = d.line(timesSize(k, none)).scale
	}
	if !math.IsNaN(d.base.Goal) {
		g := d.line(goalOf)
		l.goal = &g
	}
	return l, nil
}

const none = -1

func (d *drawn) margin(k, size int) line {
	f := d.line(timesSize(k, size))
	if size >= 0 && size < len(d.base.Sizes) {
		f.size = d.base.Sizes[size]
	}
	return f
}

// lines draws the lines of a problem through a point for the first time: it finds with which size
// each margin bends least, and whether the lines hold everywhere. A share of a mass is a line times
// the mass.
func (s *search) lines(at []int) (*linear, error) {
	d, err := s.draw(at, s.far(at))
	if err != nil {
		return nil, err
	}
	others, err := s.elsewhere(at)
	if err != nil {
		return nil, err
	}
	exact := true
	s.sizes = make(sizes, len(d.base.Margins))
	for k := range s.sizes {
		least := d.bends(others, timesSize(k, none))
		s.sizes[k] = none
		for size := range d.base.Sizes {
			if by := d.bends(others, timesSize(k, size)); least > bend && by < least/2 {
				s.sizes[k], least = size, by
			}
		}
		exact = exact && least <= bend
	}
	if !math.IsNaN(d.base.Goal) {
		exact = exact && d.bends(others, goalOf) <= bend
	}
	l, err := s.lineAt(at, s.far(at))
	if err == nil {
		l.exact = exact
	}
	return l, err
}

// bend is what a linear figure leaves, of its scale.
const bend = 1e-7

// other is a point by which lines are tried.
type other struct {
	at []int
	pt Point
}

// bends tells how far a figure is from its line where it is tried, as a share of what it is made of.
func (d *drawn) bends(others []other, of func(Point) float64) float64 {
	f, most := d.line(of), 0.0
	for _, o := range others {
		is := of(o.pt)
		off := math.Abs(f.of(d.at, o.at)-is) / max(f.scale, math.Abs(is), math.SmallestNonzeroFloat64)
		if math.IsNaN(off) {
			return math.Inf(1)
		}
		most = max(most, off)
	}
	return most
}

// elsewhere asks the points by which lines are tried: the farthest corner, half of the way there, and
// where some amounts are low and others high.
func (s *search) elsewhere(from []int) ([]other, error) {
	far := s.far(from)
	var list []other
	for _, to := range []func(i int) float64{
		func(i int) float64 { return float64(from[i] + far(i)) },
		func(i int) float64 { return float64(from[i]) + float64(far(i))/2 },
		func(i int) float64 {
			g := s.grid[i]
			const low, high = 0.19, 0.63
			return float64(g.least) + []float64{low, high}[i%2]*float64(g.most-g.least)
		},
	} {
		o := other{at: make([]int, len(from))}
		for i := range o.at {
			o.at[i] = int(math.Round(to(i)))
		}
		var err error
		if o.pt, err = s.eval(o.at); err != nil {
			return nil, err
		}
		list = append(list, o)
	}
	return list, nil
}

// aside asks a point some steps away by one amount, nearer as long as nothing of it is a number: what
// cannot be made tells nothing of the slope.
func (s *search) aside(at []int, i, stride int) (aside, error) {
	for by := stride; by != 0; by /= 2 {
		other := append([]int(nil), at...)
		other[i] += by
		if pt, err := s.eval(other); err != nil || pt.told() {
			return aside{by, pt}, err
		}
	}
	return aside{}, nil
}

// told reports whether anything of a point is a number.
func (pt Point) told() bool {
	return finite(pt.Goal) || slices.ContainsFunc(pt.Margins, finite)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// moved gives lines through another point, which has been calculated, with the slopes that they have.
func (l *linear) moved(to []int, pt Point, sizes []int) *linear {
	next := *l
	next.at, next.margins = to, slices.Clone(l.margins)
	for k := range next.margins {
		next.margins[k].is = timesSize(k, sizes[k])(pt)
		if size := sizes[k]; size >= 0 && size < len(pt.Sizes) {
			next.margins[k].size = pt.Sizes[size]
		}
	}
	if l.goal != nil {
		g := *l.goal
		g.is, next.goal = pt.Goal, &g
	}
	return &next
}
