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

// fit finds the amounts that fit a draw of the prior and the curve best, w in standard normal
// numbers, and the model around them. The spread of the points is that of the last round, and
// times coarser.
func (m *model) fit(times float64) (w []float64, l *linear, err error) {
	start := m.prior(0)
	w = append([]float64(nil), start...)
	x, slope := make([]float64, len(m.all)), make([]float64, len(m.open))
	const rounds = 3 // the spread of a point hangs on the slope of the curve that is being found
	for range rounds {
		m.values(w, 0, x, slope)
		if l, err = m.around(append([]float64(nil), x...)); err != nil {
			return nil, nil, err
		}
		l.coarser(times)
		weights := l
		for range manySteps {
			step := l.step(m, weights, w, start, slope, nil)
			if w, l, err = m.descend(w, step, start, weights, l, slope); err != nil {
				return nil, nil, err
			}
			if norm(step) < stepEnough {
				break
			}
		}
	}
	m.values(w, 0, x, slope)
	if l, err = m.around(append([]float64(nil), x...)); err != nil {
		return nil, nil, err
	}
	l.coarser(times)
	return w, l, nil
}

// descend goes along a step as far as the fit gets better.
func (m *model) descend(w, step, start []float64, weights, l *linear, slope []float64) ([]float64, *linear, error) {
	before := weights.misfit(l.r) + distance(w, start)
	part, x, next := 1.0, make([]float64, len(m.all)), make([]float64, len(w))
	for range halvings {
		for i := range w {
			next[i] = w[i] + part*step[i]
		}
		m.values(next, 0, x, slope)
		there, err := m.around(append([]float64(nil), x...))
		if err == nil && weights.misfit(there.r)+distance(next, start) <= before {
			copy(step, scaled(step, part))
			return next, there, nil
		}
		part /= 2
	}
	m.values(w, 0, x, slope)
	clear(step)
	return w, l, nil
}

// step gives the Gauss–Newton step of w towards the least squares of the curve, with the points'
// noise e (nil: none) and their weights, and of the prior's draw start.
func (l *linear) step(m *model, weights *linear, w, start, slope, noise []float64) []float64 {
	n := len(w)
	r := weights.whiten(l.r)
	if noise != nil {
		for k := range r {
			r[k] -= noise[k]
		}
	}
	jac := l.inPrior(m, weights, slope)
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
func (l *linear) inPrior(m *model, weights *linear, slope []float64) [][]float64 {
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
		white := weights.whiten(column)
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

func scaled(v []float64, by float64) []float64 {
	out := make([]float64, len(v))
	for i := range v {
		out[i] = by * v[i]
	}
	return out
}
