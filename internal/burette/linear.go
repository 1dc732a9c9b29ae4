package burette

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"sipsum/internal/acid"
)

// linear is the model around a vector of amounts: r(x + δ) = r + J·δ, with R the covariance of
// the points.
type linear struct {
	x    []float64
	r    []float64   // mol, by point
	j    [][]float64 // by point and quantity
	beta []float64   // mol per pH, by point
	bend []float64   // by point: what J of an acid without a name grows by its pK
	r2   *mat.SymDense
	half *mat.TriDense // lower root of R
}

// Steps of the differences: numerical, where a curve is smooth.
const (
	pHStep    = 1e-3
	partStep  = 1e-4 // of a quantity
	leastStep = 1e-9 // mol
	furthest  = 4.0  // standard deviations of its noise that a reading may be from its curve
)

// meet finds where on the curve of x a point stands: the pH that is near to what the meter shows
// and to where the base takes the liquid, each by its spread. There the curve is followed, since
// what a meter is off by at a point is in no other; taken at the pH that was read, the noise
// would be in the slopes too, and would bend the amounts. It gives the base needed there, the
// slope of the curve, and what is missing at the pH that was read, along the slope.
func (m *model) meet(k int, x []float64) (pH, need, beta, missing float64, err error) {
	const rounds = 3
	p, noise := m.points[k], m.kit.Noise/x[m.at.slope]
	read := m.truePH(k, x)
	pH = read
	for i := range rounds {
		if need, err = m.need(k, x, pH); err != nil {
			return
		}
		var above float64
		if above, err = m.need(k, x, pH+pHStep); err != nil {
			return
		}
		beta = (above - need) / pHStep
		missing = need + beta*(read-pH) - x[m.at.factor]*p.Base
		if i < rounds-1 {
			own := beta * noise
			off := missing * own * noise / (own*own + p.Off*p.Off)
			pH = read - min(max(off, -furthest*noise), furthest*noise)
		}
	}
	return
}

// missing gives r at x, each in its own spread.
func (m *model) missing(x []float64) ([]float64, error) {
	r := make([]float64, len(m.points))
	for k := range m.points {
		_, _, _, missing, err := m.meet(k, x)
		if err != nil {
			return nil, err
		}
		r[k] = missing
	}
	return r, nil
}

// around works out the model at x.
func (m *model) around(x []float64) (*linear, error) {
	l := &linear{x: x}
	near := append([]float64(nil), x...)
	shift := make([][]float64, len(m.liquid.Acids)) // by acid: what a pK higher by one adds to the need, mol
	for i := range shift {
		shift[i] = make([]float64, len(m.points))
	}
	for k, p := range m.points {
		pH, here, beta, missing, err := m.meet(k, x)
		if err != nil {
			return nil, err
		}
		above, row := here+beta*pHStep, make([]float64, len(x))
		for i := range m.all {
			if i == m.at.zero || i == m.at.slope || i == m.at.factor {
				continue
			}
			step := m.step(i, x[i])
			near[i] = x[i] + step
			there, err := m.need(k, near, pH)
			if err != nil {
				return nil, err
			}
			row[i] = (there - here) / step
			if a := m.acidAt(i); a >= 0 {
				if there, err = m.need(k, near, pH+pHStep); err != nil {
					return nil, err
				}
				shift[a][k] = -x[i] * ((there-above)/step - row[i]) / pHStep
			}
			near[i] = x[i]
		}
		bend, err := m.bend(k, near, pH, row)
		if err != nil {
			return nil, err
		}
		s := x[m.at.slope]
		row[m.at.zero], row[m.at.slope] = -beta/s, -beta*(p.PH-neutral-x[m.at.zero])/(s*s)
		row[m.at.factor] = -p.Base
		l.r, l.j, l.beta, l.bend = append(l.r, missing), append(l.j, row), append(l.beta, beta), append(l.bend, bend)
	}
	return l, l.weigh(m, shift)
}

// bend gives how much more of an acid without a name takes if its pK is higher: of all pairs this
// one matters, since there may be none of it at the centre.
func (m *model) bend(k int, x []float64, pH float64, row []float64) (float64, error) {
	u, pK := m.at.nameless, m.at.namelessPK
	if u < 0 {
		return 0, nil
	}
	was, strength := x[u], x[pK]
	defer func() { x[u], x[pK] = was, strength }()
	step, high := m.step(u, was), m.step(pK, strength)
	x[pK] += high
	here, err := m.need(k, x, pH)
	if err != nil {
		return 0, err
	}
	x[u] += step
	there, err := m.need(k, x, pH)
	return ((there-here)/step - row[u]) / high, err
}

// step is the difference by which a quantity is moved.
func (m *model) step(i int, x float64) float64 {
	if i == m.at.namelessPK || i == m.at.aminesPK {
		return pHStep
	}
	if i == m.at.carbonate {
		return partStep
	}
	return max(partStep*math.Abs(x), leastStep)
}

// acidAt gives the acid whose amount a quantity is; −1: of none.
func (m *model) acidAt(i int) int {
	if i < len(m.liquid.Acids) {
		return i
	}
	return -1
}

// weigh makes R: each point's own spread, and what the pK of each acid move together.
func (l *linear) weigh(m *model, shift [][]float64) error {
	n := len(m.points)
	l.r2 = mat.NewSymDense(n, nil)
	for k, p := range m.points {
		own := math.Hypot(l.beta[k]*m.kit.Noise/l.x[m.at.slope], p.Off)
		l.r2.SetSym(k, k, own*own)
	}
	for i, a := range m.liquid.Acids {
		sd := pKSpread(a.Acid)
		for k := range n {
			for q := k; q < n; q++ {
				l.r2.SetSym(k, q, l.r2.At(k, q)+sd*sd*shift[i][k]*shift[i][q])
			}
		}
	}
	return l.factorise()
}

func (l *linear) factorise() error {
	var ch mat.Cholesky
	if !ch.Factorize(l.r2) {
		return errFew
	}
	l.half = &mat.TriDense{}
	ch.LTo(l.half)
	return nil
}

// coarser makes every point that many times as uncertain.
func (l *linear) coarser(times float64) {
	l.r2.ScaleSym(times*times, l.r2)
	l.half.ScaleTri(times, l.half)
}

// whiten gives root(R)⁻¹·v.
func (l *linear) whiten(v []float64) []float64 {
	out := append([]float64(nil), v...)
	for i := range out {
		for j := range i {
			out[i] -= l.half.At(i, j) * out[j]
		}
		out[i] /= l.half.At(i, i)
	}
	return out
}

// pKSpread is how far the constants of an acid may be off in a liquid: those of its steps that
// are least known, and what the activity model misses.
func pKSpread(a acid.Index) float64 {
	most := 0.0
	for _, s := range acid.All()[a].Steps {
		most = max(most, s.SD)
	}
	return math.Hypot(most, rowOf("activity model").sd)
}
