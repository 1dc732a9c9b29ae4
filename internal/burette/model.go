package burette

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acid"
	"sipsum/internal/estimate"
)

// model is a liquid, a kit and a curve, with all that is unknown of them.
type model struct {
	liquid Liquid
	kit    Kit
	points []Point

	all  []unknown // in the order of x
	at   places
	open []int      // those that are asked for, by place in all
	root *mat.Dense // lower: Cholesky root of the prior's covariance of the open ones, on their scales

	solver *acid.Solver
	sol    *acid.Solution
	near   []acid.State // by point: where its last equilibrium was
}

// newModel lists what is unknown, with an acid without a name around a pK. The pK of what has no
// name are drawn on streams of path.
func newModel(ens estimate.Ensemble, path string, celsius float64, l Liquid, k Kit, points []Point, pK row) (*model, error) {
	s, err := acid.NewSolver(celsius)
	if err != nil {
		return nil, err
	}
	m := &model{liquid: l, kit: k, points: points, solver: s, sol: acid.New(0), near: make([]acid.State, len(points))}
	for _, a := range l.Acids {
		m.at.acids = append(m.at.acids, m.add(acid.All()[a.Acid].Name, a.Mol, false))
	}
	m.at.nameless, m.at.namelessPK = m.addGroups(ens, path, "acid without a name", l.Nameless, pK)
	m.at.amines, m.at.aminesPK = m.addGroups(ens, path, "amines", l.Amines, rowOf("pK of amines"))
	m.at.strong = m.add("strong ions", l.Strong, true)
	m.at.zero = m.add("zero of the meter", k.Zero, true)
	m.at.slope = m.add("slope of the meter", k.Slope, true)
	m.at.factor = m.add("base", k.Factor, false)
	m.at.carbonate = -1
	if k.Carbonate != nil {
		m.at.carbonate = m.add("carbonate in the base", k.Carbonate, false)
	}
	for i, u := range m.all {
		if u.open() {
			m.open = append(m.open, i)
		}
	}
	if len(m.open) == 0 {
		return nil, errOne
	}
	m.root = m.priorRoot()
	return m, nil
}

func (m *model) add(what string, column []float64, signed bool) int {
	m.all = append(m.all, newUnknown(what, column, signed))
	return len(m.all) - 1
}

// addGroups adds monoprotic groups and their pK.
func (m *model) addGroups(ens estimate.Ensemble, path, what string, mol []float64, pK row) (amount, pk int) {
	if mol == nil {
		return -1, -1
	}
	column := ens.Column(estimate.Input{
		Central: pK.value, Shape: estimate.Normal, SD: pK.sd, Low: math.Inf(-1), High: math.Inf(1),
		Stream: ens.Stream("burette", path, what),
	})
	return m.add(what, mol, false), m.add("pK of "+what, column, true)
}

// drawsToAnUnknown is how many draws the prior wants for each unknown before their correlations
// count: with ten a sample of independent ones shows 0.3 at most.
const drawsToAnUnknown = 10

// priorRoot gives the Cholesky root of the open unknowns' covariance on their scales. What is in
// the liquid goes together as the draws have it; the instruments go with nothing.
func (m *model) priorRoot() *mat.Dense {
	n := len(m.open)
	cov := mat.NewSymDense(n, nil)
	enough := len(m.liquid.Strong)-1 >= drawsToAnUnknown*n
	for i, a := range m.open {
		cov.SetSym(i, i, m.all[a].sd*m.all[a].sd)
		for j := range i {
			if b := m.open[j]; enough && m.inLiquid(a) && m.inLiquid(b) {
				cov.SetSym(i, j, stat.Covariance(m.all[a].z[1:], m.all[b].z[1:], nil))
			}
		}
	}
	var ch mat.Cholesky
	if !ch.Factorize(cov) { // two that are one: each by itself is the wider prior
		for i := range n {
			for j := range i {
				cov.SetSym(i, j, 0)
			}
		}
		ch.Factorize(cov)
	}
	var root mat.TriDense
	ch.LTo(&root)
	return mat.DenseCopyOf(&root)
}

// inLiquid tells what the recipe draws from what this room and its instruments do.
func (m *model) inLiquid(i int) bool {
	return i <= m.at.strong && i != m.at.namelessPK && i != m.at.aminesPK
}

// prior gives a draw of the prior as standard normal numbers w: z = mean + root·w.
func (m *model) prior(d int) []float64 {
	n := len(m.open)
	off := mat.NewVecDense(n, nil)
	for i, a := range m.open {
		off.SetVec(i, m.all[a].z[d]-m.all[a].mean)
	}
	w := mat.NewVecDense(n, nil)
	if err := w.SolveVec(m.root, off); err != nil {
		clear(w.RawVector().Data) // never: a Cholesky root has no zero on its diagonal
	}
	return w.RawVector().Data
}

// values gives all quantities at w, and how each open one grows on its scale; what is not open
// is as in the draw d.
func (m *model) values(w []float64, d int, x, slope []float64) {
	for i, u := range m.all {
		x[i] = u.column[d]
	}
	for i, a := range m.open {
		z := m.all[a].mean
		for j := range i + 1 {
			z += m.root.At(i, j) * w[j]
		}
		x[a], slope[i] = m.all[a].coordinate.at(z)
	}
}

// logPrior gives ln of the prior's density at x, but for a constant; −Inf where nothing can be.
func (m *model) logPrior(x []float64) float64 {
	n := len(m.open)
	sum := 0.0
	w := make([]float64, n)
	for i, a := range m.open {
		u := &m.all[a]
		if !u.holds(x[a]) {
			return math.Inf(-1)
		}
		z := u.of(x[a])
		_, slope := u.at(z)
		sum -= math.Log(slope)
		w[i] = z - u.mean
		for j := range i {
			w[i] -= m.root.At(i, j) * w[j]
		}
		w[i] /= m.root.At(i, i)
		sum -= w[i] * w[i] / 2
	}
	return sum
}

// need gives mol of base that take the liquid, with what point k brings, to a pH.
func (m *model) need(k int, x []float64, pH float64) (float64, error) {
	m.pour(m.sol, x, m.points[k])
	state, err := m.solver.Titrate(m.sol, pH, m.near[k])
	if err != nil {
		return 0, err
	}
	m.near[k] = state
	return state.Base * m.sol.Solvent, nil
}

// truePH gives the pH of point k at x.
func (m *model) truePH(k int, x []float64) float64 {
	return TrueOf(m.points[k].PH, x[m.at.zero], x[m.at.slope])
}
