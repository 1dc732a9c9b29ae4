package burette

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// The search ends when a step is this small, in standard deviations of the prior; it is
// numerical. A step is halved as long as it makes the fit worse.
const (
	stepEnough = 1e-4
	manySteps  = 40
	halvings   = 12
)

// fit finds the amounts that fit the central prior and the curve best, w in standard normal
// numbers, from w on, and the model around them. Points are that many times coarser than their
// spreads.
func (m *model) fit(w []float64, times float64) ([]float64, *linear, error) {
	start := m.prior(0)
	x, slope := make([]float64, len(m.all)), make([]float64, len(m.open))
	w = append([]float64(nil), w...)
	for range manySteps { // the spread of a point hangs on the slope of the curve that is being found
		m.values(w, 0, x, slope)
		l, err := m.around(append([]float64(nil), x...))
		if err != nil {
			return nil, nil, err
		}
		l.coarser(times)
		step := l.step(m, w, start, slope)
		if norm(step) < stepEnough || !m.descend(w, step, start, l) {
			return w, l, nil
		}
	}
	m.values(w, 0, x, slope)
	l, err := m.around(x)
	if err == nil {
		l.coarser(times)
	}
	return w, l, err
}

// descend moves w along a step as far as the fit gets better, by the weights of the points at its
// beginning. It reports whether it moved.
func (m *model) descend(w, step, start []float64, l *linear) bool {
	before := l.misfit(l.r) + distance(w, start)
	part, x, next, slope := 1.0, make([]float64, len(m.all)), make([]float64, len(w)), make([]float64, len(w))
	for range halvings {
		for i := range w {
			next[i] = w[i] + part*step[i]
		}
		m.values(next, 0, x, slope)
		r, err := m.missing(x)
		if err == nil && l.misfit(r)+distance(next, start) <= before {
			copy(w, next)
			return true
		}
		part /= 2
	}
	return false
}

// step gives the Gauss–Newton step of w towards the least squares of the curve and of the prior's
// draw start.
func (l *linear) step(m *model, w, start, slope []float64) []float64 {
	n := len(w)
	r, jac := l.whiten(l.r), l.inPrior(m, slope)
	normal, right := mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
	for i := range n {
		right.SetVec(i, start[i]-w[i])
		normal.SetSym(i, i, 1)
	}
	for k, row := range jac {
		for i := range n {
			right.SetVec(i, right.AtVec(i)-row[i]*r[k])
			for j := i; j < n; j++ {
				normal.SetSym(i, j, normal.At(i, j)+row[i]*row[j])
			}
		}
	}
	var ch mat.Cholesky
	ch.Factorize(normal) // the prior's identity makes it positive
	var step mat.VecDense
	if err := ch.SolveVecTo(&step, right); err != nil {
		return make([]float64, n)
	}
	return step.RawVector().Data
}

// inPrior gives the whitened Jacobian by w, point by point.
func (l *linear) inPrior(m *model, slope []float64) [][]float64 {
	n := len(m.open)
	rows := make([][]float64, len(l.j))
	for k := range rows {
		rows[k] = make([]float64, n)
	}
	column := make([]float64, len(l.j))
	for i, a := range m.open {
		for k := range l.j {
			column[k] = l.j[k][a] * slope[i]
		}
		white := l.whiten(column)
		for j := range i + 1 {
			for k := range rows {
				rows[k][j] += white[k] * m.root.At(i, j)
			}
		}
	}
	return rows
}

// misfit is the curve's part of twice the negative logarithm of the posterior.
func (l *linear) misfit(r []float64) float64 {
	sum := 0.0
	for _, x := range l.whiten(r) {
		sum += x * x
	}
	return sum
}

// distance is the prior's part.
func distance(w, start []float64) float64 {
	sum := 0.0
	for i := range w {
		sum += (w[i] - start[i]) * (w[i] - start[i])
	}
	return sum
}

func norm(v []float64) float64 { return math.Sqrt(distance(v, make([]float64, len(v)))) }
