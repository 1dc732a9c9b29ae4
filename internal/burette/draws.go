package burette

import (
	"math"
	"slices"
	"strconv"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"sipsum/internal/estimate"
)

// drawer finds draws of the posterior with the model linear in the amounts around the centre.
type drawer struct {
	m      *model
	centre *linear
	w      []float64   // of the centre
	r      []float64   // whitened, at the centre
	jac    [][]float64 // whitened, by point and quantity
	bend   []float64   // whitened: of an acid without a name by its pK
	slice  *ellipse
}

// drawSteps is how many steps the least squares of a draw takes at most.
const drawSteps = 8

func newDrawer(m *model, w []float64, centre *linear) *drawer {
	d := &drawer{m: m, centre: centre, w: w, r: centre.whiten(centre.r), bend: centre.whiten(centre.bend)}
	d.jac = make([][]float64, len(m.points))
	for k := range d.jac {
		d.jac[k] = make([]float64, len(m.all))
	}
	column := make([]float64, len(m.points))
	for i := range m.all {
		for k := range column {
			column[k] = centre.j[k][i]
		}
		for k, x := range centre.whiten(column) {
			d.jac[k][i] = x
		}
	}
	d.slice = newEllipse(d)
	return d
}

// scratch is what one draw is worked out in.
type scratch struct {
	x, slope, r, e []float64
	jac            [][]float64
}

func (d *drawer) newScratch() *scratch {
	s := &scratch{x: make([]float64, len(d.m.all)), slope: make([]float64, len(d.m.open)), r: make([]float64, len(d.m.points)), e: make([]float64, len(d.m.points))}
	for range d.m.points {
		s.jac = append(s.jac, make([]float64, len(d.m.open)))
	}
	return s
}

// misses works out what the points miss at w, in their own spreads and less their noise.
func (d *drawer) misses(w []float64, draw int, s *scratch) {
	d.m.values(w, draw, s.x, s.slope)
	d.missesAt(s)
}

// missesAt works them out at the quantities that are in s.
func (d *drawer) missesAt(s *scratch) {
	bent := 0.0
	if u, pK := d.m.at.nameless, d.m.at.namelessPK; u >= 0 {
		bent = (s.x[u] - d.centre.x[u]) * (s.x[pK] - d.centre.x[pK])
	}
	for k, row := range d.jac {
		sum := d.r[k] - s.e[k] + d.bend[k]*bent
		for i, j := range row {
			sum += j * (s.x[i] - d.centre.x[i])
		}
		s.r[k] = sum
	}
}

// normal gives the matrix of the least squares at what is in s.
func (d *drawer) normal(s *scratch) *mat.SymDense {
	n := len(d.m.open)
	normal := mat.NewSymDense(n, nil)
	for k, row := range s.jac {
		clear(row)
		for i, a := range d.m.open {
			grown := d.jac[k][a] * s.slope[i]
			for j := range i + 1 {
				row[j] += grown * d.m.root.At(i, j)
			}
		}
		for i := range n {
			for j := i; j < n; j++ {
				normal.SetSym(i, j, normal.At(i, j)+row[i]*row[j])
			}
		}
	}
	for i := range n {
		normal.SetSym(i, i, normal.At(i, i)+1)
	}
	return normal
}

// leastSquares finds the w that fits the points with their noise and a draw of the prior best.
func (d *drawer) leastSquares(draw int, s *scratch) []float64 {
	start := d.m.prior(draw)
	w, next := append([]float64(nil), d.w...), make([]float64, len(d.w))
	d.misses(w, draw, s)
	for range drawSteps {
		before := distance(s.r, make([]float64, len(s.r))) + distance(w, start)
		var ch mat.Cholesky
		ch.Factorize(d.normal(s))
		right := mat.NewVecDense(len(w), nil)
		for i := range w {
			sum := start[i] - w[i]
			for k, row := range s.jac {
				sum -= row[i] * s.r[k]
			}
			right.SetVec(i, sum)
		}
		var step mat.VecDense
		if err := ch.SolveVecTo(&step, right); err != nil {
			return w
		}
		part, better := 1.0, false
		for range halvings {
			for i := range w {
				next[i] = w[i] + part*step.AtVec(i)
			}
			if d.misses(next, draw, s); distance(s.r, make([]float64, len(s.r)))+distance(next, start) <= before {
				better = true
				break
			}
			part /= 2
		}
		if !better {
			break
		}
		copy(w, next)
		if part*mat.Norm(&step, 2) < stepEnough {
			break
		}
	}
	return w
}

// numbersOf gives a stream of standard normal numbers of a draw, which are nothing where the
// ensemble holds everything of this kind steady.
func numbersOf(ens estimate.Ensemble, path string, draw int) func() float64 {
	const chunk = 256
	var column []float64
	page, at := 0, 0
	return func() float64 {
		if at == len(column) {
			column = make([]float64, chunk+1)
			estimate.Input{Shape: estimate.Normal, SD: 1, Low: math.Inf(-1), High: math.Inf(1), Stream: ens.Stream("burette", path, strconv.Itoa(draw), strconv.Itoa(page))}.Fill(column)
			page, at = page+1, 1
		}
		at++
		return column[at-1]
	}
}

// columns gives the quantities in every draw, each of the part that its draw falls to; the
// centre is the parts' mean.
func (p *Posterior) columns(ens estimate.Ensemble, path string) [][]float64 {
	n := len(p.parts[0].all[0].column)
	out := make([][]float64, len(p.parts[0].all))
	drawers := make([]*drawer, len(p.parts))
	for i := range out {
		out[i] = make([]float64, n)
	}
	for i, part := range p.parts {
		drawers[i] = newDrawer(part.model, part.w, part.centre)
		for j, x := range part.centre.x {
			out[j][0] += part.weight * x
		}
	}
	_ = estimate.InBlocks(n-1, func(from, to int) error {
		s := drawers[0].newScratch()
		for draw := from + 1; draw <= to; draw++ {
			random := numbersOf(ens, path, draw)
			d := drawers[p.fall(distuv.UnitNormal.CDF(random()))]
			for k := range s.e {
				s.e[k] = random()
			}
			d.m.values(d.leastSquares(draw, s), draw, s.x, s.slope)
			d.slice.improve(d, s, random)
			for i, x := range s.x {
				out[i][draw] = x
			}
		}
		return nil
	})
	return out
}

// fall gives the part to which a share of the whole falls.
func (p *Posterior) fall(share float64) int {
	for i, part := range p.parts {
		if share -= part.weight; share < 0 {
			return i
		}
	}
	return slices.Index(p.parts, p.best())
}
