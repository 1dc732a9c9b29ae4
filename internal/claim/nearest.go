package claim

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
)

// Lever is an input that can be other than it is taken to be: its draws, the central value
// first, and the range in which it can be meant.
type Lever struct {
	Column    []float64
	Low, High float64
}

// World is a setting of the levers, and how far it is from what they are taken to be, in
// standard deviations of the draws.
type World struct {
	At       []float64
	Distance float64
}

// Margin is by how much a claim holds in a world; not above zero where it is false.
type Margin func(at []float64) (float64, error)

// The iteration of Nearest: our own bounds, far beyond what drinks want (four or five rounds).
const (
	mostRounds = 30
	stepOfSD   = 1e-2 // of a difference that stands for a derivative
	settled    = 1e-3 // standard deviations between two rounds
	hardlyOff  = 2e-2 // of a margin's standard deviation
	halvings   = 40
)

// Nearest finds the least change of levers by which a margin comes down to zero; ok is false
// where no setting within their ranges does, as far as the iteration tells. drawn is the margin in
// the draws of the levers: the plane through them is where the search begins, and ends if the margin
// is hardly off it. With drawn nil it begins at the centre.
func Nearest(levers []Lever, drawn []float64, g Margin) (w World, ok bool, err error) {
	s := newSpace(levers)
	x := append([]float64(nil), s.centre...)
	if drawn != nil {
		var reached bool
		if x, reached = s.onPlane(drawn[0], s.regress(drawn)); !reached { // the end of all ranges
			if m, err := g(x); err != nil || m > 0 {
				return World{}, false, err
			}
		}
		m, err := g(x)
		if err != nil {
			return World{}, false, err
		}
		if math.Abs(m) <= hardlyOff*spread(drawn) {
			return s.walkOut(x, g)
		}
	}
	for range mostRounds {
		g0, slope, err := s.slope(x, g)
		if err != nil {
			return World{}, false, err
		}
		// The plane that touches the margin at x, as seen from the centre.
		here := g0
		for i := range slope {
			here += slope[i] * (s.centre[i] - x[i])
		}
		next, reached := s.onPlane(here, slope)
		if !reached { // the end of all ranges
			if m, err := g(next); err != nil || m > 0 {
				return World{}, false, err
			}
		}
		moved := s.distance(next, x)
		x = next
		if moved < settled {
			break
		}
	}
	return s.walkOut(x, g)
}

// Foretold is the distance of the nearest world by the plane through the draws; infinite where the
// ranges of the levers do not reach it.
func Foretold(levers []Lever, drawn []float64) float64 {
	s := newSpace(levers)
	x, reached := s.onPlane(drawn[0], s.regress(drawn))
	if !reached {
		return math.Inf(1)
	}
	return s.distance(x, s.centre)
}

// Distance is how far levers are set from what they are taken to be, in standard deviations of their draws.
func Distance(levers []Lever, at []float64) float64 {
	s := newSpace(levers)
	return s.distance(at, s.centre)
}

// Linear is the closed form for a margin g₀ + a·(x − x₀) whose levers no range binds:
// x = x₀ − Σa·g₀/(aᵀΣa), at the distance g₀/√(aᵀΣa).
func Linear(centre []float64, covariance mat.Symmetric, g0 float64, a []float64) World {
	var sa mat.VecDense
	sa.MulVec(covariance, mat.NewVecDense(len(a), a))
	variance := mat.Dot(mat.NewVecDense(len(a), a), &sa)
	w := World{At: make([]float64, len(a)), Distance: math.Abs(g0) / math.Sqrt(variance)}
	for i := range w.At {
		w.At[i] = centre[i] - sa.AtVec(i)*g0/variance
	}
	return w
}

// space is the levers with their covariance.
type space struct {
	levers     []Lever
	centre     []float64
	covariance *mat.SymDense
	precision  *mat.SymDense
}

// ridge keeps a covariance of levers that draw alike from being singular: a billionth of each
// variance.
const ridge = 1e-9

func newSpace(levers []Lever) *space {
	k, n := len(levers), len(levers[0].Column)
	s := &space{levers: levers, centre: make([]float64, k), covariance: mat.NewSymDense(k, nil), precision: mat.NewSymDense(k, nil)}
	draws := mat.NewDense(n-1, k, nil)
	for i, l := range levers {
		s.centre[i] = l.Column[0]
		for d, x := range l.Column[1:] {
			draws.Set(d, i, x)
		}
	}
	stat.CovarianceMatrix(s.covariance, draws, nil)
	for i := range k {
		s.covariance.SetSym(i, i, s.covariance.At(i, i)*(1+ridge))
	}
	var factors mat.Cholesky
	if factors.Factorize(s.covariance) {
		_ = factors.InverseTo(s.precision)
	}
	return s
}

// regress gives the slope of the plane through the draws of a margin: Σ⁻¹ cov(x, margin). A lever
// may have more draws than it.
func (s *space) regress(drawn []float64) []float64 {
	with := mat.NewVecDense(len(s.levers), nil)
	for i, l := range s.levers {
		n := min(len(l.Column), len(drawn))
		with.SetVec(i, stat.Covariance(l.Column[1:n], drawn[1:n], nil))
	}
	var slope mat.VecDense
	slope.MulVec(s.precision, with)
	return slope.RawVector().Data
}

func (s *space) sd(i int) float64 { return math.Sqrt(s.covariance.At(i, i)) }

// slope gives a margin and its derivatives at a point, by differences on the side that the range
// allows.
func (s *space) slope(x []float64, g Margin) (float64, []float64, error) {
	g0, err := g(x)
	if err != nil {
		return 0, nil, err
	}
	slope := make([]float64, len(x))
	moved := append([]float64(nil), x...)
	for i := range x {
		step := stepOfSD * s.sd(i)
		if x[i]+step > s.levers[i].High {
			step = -step
		}
		moved[i] = x[i] + step
		gi, err := g(moved)
		if err != nil {
			return 0, nil, err
		}
		slope[i], moved[i] = (gi-g0)/step, x[i]
	}
	return g0, slope, nil
}

// onPlane gives the nearest point to the centre at which g₀ + a·(x − centre) is zero. Levers
// that would leave their range stay at its end, and the others, which go with them in the draws,
// make up for it. Where all are at their ends and it is not zero yet, reached is false.
func (s *space) onPlane(g0 float64, a []float64) (x []float64, reached bool) {
	fixed := map[int]float64{} // by lever: its distance from the centre
	for {
		delta, ok := s.plane(g0, a, fixed)
		x = make([]float64, len(a))
		worst, most := -1, 0.0
		for i := range x {
			x[i] = s.centre[i] + delta[i]
			l := s.levers[i]
			if out := max(l.Low-x[i], x[i]-l.High) / s.sd(i); out > most {
				if _, is := fixed[i]; !is {
					worst, most = i, out
				}
			}
		}
		if worst < 0 || !ok {
			return x, ok
		}
		l := s.levers[worst]
		fixed[worst] = min(max(x[worst], l.Low), l.High) - s.centre[worst]
	}
}

// plane solves it with some levers fixed: of the free ones, P the precision of the draws,
//
//	δ = −P⁻¹ P_f f + λ P⁻¹ a     with λ such that a·δ + a_f·f = −g₀
func (s *space) plane(g0 float64, a []float64, fixed map[int]float64) (delta []float64, ok bool) {
	delta = make([]float64, len(a))
	var free []int
	for i := range a {
		if f, is := fixed[i]; is {
			delta[i] = f
			g0 += a[i] * f
		} else {
			free = append(free, i)
		}
	}
	if len(free) == 0 {
		return delta, false
	}
	k := len(free)
	p, af, pull := mat.NewSymDense(k, nil), mat.NewVecDense(k, nil), mat.NewVecDense(k, nil)
	for i, row := range free {
		af.SetVec(i, a[row])
		sum := 0.0
		for j, f := range fixed {
			sum -= s.precision.At(row, j) * f
		}
		pull.SetVec(i, sum)
		for j := i; j < k; j++ {
			p.SetSym(i, j, s.precision.At(row, free[j]))
		}
	}
	var factors mat.Cholesky
	if !factors.Factorize(p) {
		return delta, false
	}
	var drift, along mat.VecDense
	if factors.SolveVecTo(&drift, pull) != nil || factors.SolveVecTo(&along, af) != nil {
		return delta, false
	}
	bends := mat.Dot(af, &along)
	if !(bends > 0) {
		return delta, false
	}
	lambda := (-g0 - mat.Dot(af, &drift)) / bends
	for i, row := range free {
		delta[row] = drift.AtVec(i) + lambda*along.AtVec(i)
	}
	return delta, true
}

func (s *space) distance(x, y []float64) float64 {
	d := mat.NewVecDense(len(x), nil)
	for i := range x {
		d.SetVec(i, x[i]-y[i])
	}
	return math.Sqrt(max(mat.Inner(d, s.precision, d), 0))
}

// walkOut goes from the centre through a point, within the ranges, as far as it takes for the
// margin itself to be gone.
func (s *space) walkOut(x []float64, g Margin) (World, bool, error) {
	point := func(t float64) []float64 {
		p := make([]float64, len(x))
		for i := range p {
			l := s.levers[i]
			p[i] = min(max(s.centre[i]+t*(x[i]-s.centre[i]), l.Low), l.High)
		}
		return p
	}
	const far, stride = 4, 1.25 // times the way to the plane, and by what it is lengthened: our own bounds
	near, gone := 0.0, 1.0
	above, below, err := 0.0, 0.0, error(nil)
	if above, err = g(s.centre); err != nil {
		return World{}, false, err
	}
	for {
		if below, err = g(point(gone)); err != nil {
			return World{}, false, err
		}
		if below <= 0 {
			break
		}
		if near, above, gone = gone, below, gone*stride; gone > far {
			return World{}, false, nil
		}
	}
	way := s.distance(point(1), s.centre)
	for range halvings { // a chord, kept off its ends, so that both come nearer
		if (gone-near)*way < settled {
			break
		}
		const inside = 0.05
		t := above / (above - below)
		if math.IsNaN(t) || math.IsInf(t, 0) {
			t = 0.5
		}
		middle := near + (gone-near)*min(max(t, inside), 1-inside)
		m, err := g(point(middle))
		if err != nil {
			return World{}, false, err
		}
		if m <= 0 {
			gone, below = middle, m
		} else {
			near, above = middle, m
		}
	}
	p := point(gone)
	return World{p, s.distance(p, s.centre)}, true, nil
}
