package burette

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// ellipse takes Metropolis steps that leave the posterior as it is: slices of ellipses around the
// centre (Murray, Adams and MacKay 2010; Nishihara, Murray and Adams 2014). They go through the
// amounts as they stand, in which what the points say is normal and what is tight is straight,
// each over the spread of its prior; in logarithms a sum that the curve tells well is a bent and
// narrow ridge, along which nothing gets far.
type ellipse struct {
	unit   []float64  // standard deviation of the prior, by open quantity
	spread *mat.Dense // upper root of the covariance around the centre
	grip   *mat.Dense // its inverse
}

const (
	sliceSteps = 12
	manyTurns  = 80 // of an ellipse, whose arc is cut at each
)

func newEllipse(d *drawer) *ellipse {
	m := d.m
	n := len(m.open)
	e := &ellipse{}
	prior := mat.NewSymDense(n, nil)
	for i, a := range m.open {
		e.unit = append(e.unit, stat.StdDev(m.all[a].column[1:], nil))
		prior.SetSym(i, i, 1)
	}
	normal := mat.NewSymDense(n, nil)
	for _, row := range d.jac {
		own := make([]float64, n)
		for i, a := range m.open {
			own[i] = row[a] * e.unit[i]
		}
		normal.SymRankOne(normal, 1, mat.NewVecDense(n, own))
	}
	normal.AddSym(normal, prior)
	var ch mat.Cholesky
	ch.Factorize(normal) // the prior's identity makes it positive
	var grip, spread mat.TriDense
	ch.UTo(&grip)
	if err := spread.InverseTri(&grip); err != nil {
		panic("burette: a positive matrix without an inverse: " + err.Error()) // never
	}
	e.grip, e.spread = mat.DenseCopyOf(&grip), mat.DenseCopyOf(&spread)
	return e
}

// improve takes steps from the quantities in s, and leaves them there. random gives standard
// normal numbers.
func (e *ellipse) improve(d *drawer, s *scratch, random func() float64) {
	clear(s.e)
	n := len(e.unit)
	at, turn := make([]float64, n), make([]float64, n)
	for i, a := range d.m.open {
		at[i] = (s.x[a] - d.centre.x[a]) / e.unit[i]
	}
	share := func() float64 { return distuv.UnitNormal.CDF(random()) }
	next := make([]float64, n)
	here := e.level(d, s, at)
	if math.IsInf(here, -1) {
		return
	}
	u := make([]float64, n)
	for range sliceSteps {
		for i := range u {
			u[i] = random()
		}
		e.turn(u, turn)
		floor := here + math.Log(share())
		angle := 2 * math.Pi * share()
		low, high := angle-2*math.Pi, angle
		for range manyTurns {
			sin, cos := math.Sincos(angle)
			for i := range next {
				next[i] = at[i]*cos + turn[i]*sin
			}
			if there := e.level(d, s, next); there > floor {
				copy(at, next)
				here = there
				break
			}
			if angle < 0 {
				low = angle
			} else {
				high = angle
			}
			angle = low + (high-low)*share()
		}
	}
	e.put(d, s, at)
}

// turn makes standard normal numbers u a draw of the normal distribution around the centre.
func (e *ellipse) turn(u, out []float64) {
	for i := range out {
		out[i] = 0
		for j := i; j < len(u); j++ {
			out[i] += e.spread.At(i, j) * u[j]
		}
	}
}

// put writes the quantities of a place into s.
func (e *ellipse) put(d *drawer, s *scratch, at []float64) {
	for i, a := range d.m.open {
		s.x[a] = d.centre.x[a] + e.unit[i]*at[i]
	}
}

// level gives ln of the posterior at a place, over the normal distribution around the centre;
// −Inf where nothing can be.
func (e *ellipse) level(d *drawer, s *scratch, at []float64) float64 {
	e.put(d, s, at)
	prior := d.m.logPrior(s.x)
	if math.IsInf(prior, -1) {
		return prior
	}
	d.missesAt(s)
	sum := 0.0
	for _, r := range s.r {
		sum -= r * r
	}
	for i := range at {
		z := 0.0
		for j := i; j < len(at); j++ {
			z += e.grip.At(i, j) * at[j]
		}
		sum += z * z
	}
	return prior + sum/2
}
