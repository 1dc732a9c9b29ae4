package burette

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"sipsum/internal/acid"
	"sipsum/internal/estimate"
)

// Outlook is a liquid as its recipe and the points that were read of it so far have it, before
// more are read: how sharply the acids would be known then is Fisher's information around the
// centre, joined with the prior,
//
//	C = (1 + JᵀR⁻¹J)⁻¹
//
// which is the least covariance that anybody can reach (Cramér and Rao), and needs no reading,
// only where it would be taken.
type Outlook struct {
	m    *model
	w, x []float64 // the centre
	read []Point
	// Scatter is how many times coarser the points read so far are than they should be.
	Scatter float64
}

// Look gives the outlook of a liquid; read may be empty. Points that count for nothing in Ask
// count for nothing here.
func Look(ens estimate.Ensemble, path string, celsius float64, l Liquid, k Kit, read []Point) (*Outlook, error) {
	m, err := newModel(ens, path, celsius, l, k, nil, rowOf("pK of an acid without a name"))
	if err != nil {
		return nil, err
	}
	o := &Outlook{m: m, w: m.prior(0), read: counted(read), Scatter: 1}
	if len(o.read) > 0 {
		o.watch(o.read)
		if o.w, _, err = m.fit(o.w, 1); err != nil {
			return nil, err
		}
	}
	o.x = make([]float64, len(m.all))
	m.values(o.w, 0, o.x, make([]float64, len(m.open)))
	return o, nil
}

// Outlook is what is known after the curve, before a further point.
func (p *Posterior) Outlook() *Outlook {
	best := p.best()
	return &Outlook{m: best.model, w: best.w, x: best.centre.x, read: best.points, Scatter: p.Scatter}
}

// watch makes points those of the model.
func (o *Outlook) watch(points []Point) {
	o.m.points, o.m.near = points, make([]acid.State, len(points))
}

// BaseTo gives the mol of base, as strong as it is said to be, that takes the liquid to a pH. Each
// mol brings kg of water.
func (o *Outlook) BaseTo(pH, waterPerMol float64) (float64, error) {
	const rounds = 4 // of the water and the carbonate that come with the base itself
	base := 0.0
	for range rounds {
		o.watch([]Point{{Base: base, Water: max(base, 0) * waterPerMol}})
		need, err := o.m.need(0, o.x, pH)
		if err != nil {
			return 0, err
		}
		base = need / o.x[o.m.at.factor]
	}
	return base, nil
}

// Shown fills in what the meter would show at points that nobody has read.
func (o *Outlook) Shown(points []Point) error {
	sol, near := acid.New(0), acid.State{}
	for i, p := range points {
		o.m.pour(sol, o.x, p)
		base := o.x[o.m.at.factor] * p.Base
		sol.Strong += base
		sol.Background += math.Abs(base) / 2 // as package acid counts it
		var err error
		if near, err = o.m.solver.Solve(sol, near); err != nil {
			return err
		}
		zero, slope := o.x[o.m.at.zero], o.x[o.m.at.slope]
		points[i].PH = neutral + zero + slope*(near.PH-neutral)
	}
	return nil
}

// Tells gives what the points read so far and further ones tell. Without any it is the recipe.
func (o *Outlook) Tells(further []Point) (Told, error) {
	all, err := o.Each(nil, further)
	if err != nil {
		return Told{}, err
	}
	return all[0], nil
}

// Each gives what the points read so far and all of with tell, with each of further beside them;
// the first entry is without.
func (o *Outlook) Each(further, with []Point) ([]Told, error) {
	base := append(append([]Point{}, o.read...), with...)
	o.watch(append(append([]Point{}, base...), further...))
	jac, r, err := o.information()
	if err != nil {
		return nil, err
	}
	kept := make([]int, len(base))
	for k := range kept {
		kept[k] = k
	}
	list := make([]Told, 0, len(further)+1)
	first, err := o.told(jac, r, kept)
	if err != nil {
		return nil, err
	}
	list = append(list, first)
	for k := range further {
		t, err := o.told(jac, r, append(kept[:len(base):len(base)], len(base)+k))
		if err != nil {
			return nil, err
		}
		list = append(list, t)
	}
	return list, nil
}

// information gives the slopes of the points by the standard normal numbers of the prior, and
// their covariance.
func (o *Outlook) information() (jac [][]float64, r *mat.SymDense, err error) {
	n := len(o.m.open)
	if len(o.m.points) == 0 {
		return nil, nil, nil
	}
	slope := make([]float64, n)
	o.m.values(o.w, 0, make([]float64, len(o.m.all)), slope)
	l, err := o.m.around(o.x)
	if err != nil {
		return nil, nil, err
	}
	l.coarser(o.Scatter)
	jac = make([][]float64, len(o.m.points))
	for k := range jac {
		jac[k] = make([]float64, n)
		for i, a := range o.m.open {
			for j := range i + 1 {
				jac[k][j] += l.j[k][a] * slope[i] * o.m.root.At(i, j)
			}
		}
	}
	return jac, l.r2, nil
}

// told weighs some of the points with the prior.
func (o *Outlook) told(jac [][]float64, r *mat.SymDense, points []int) (Told, error) {
	n := len(o.m.open)
	information := mat.NewSymDense(n, nil)
	for i := range n {
		information.SetSym(i, i, 1)
	}
	if len(points) > 0 {
		some := mat.NewSymDense(len(points), nil)
		rows := mat.NewDense(len(points), n, nil)
		for i, k := range points {
			rows.SetRow(i, jac[k])
			for j := range i + 1 {
				some.SetSym(i, j, r.At(k, points[j]))
			}
		}
		var ch mat.Cholesky
		if !ch.Factorize(some) {
			return Told{}, errFew
		}
		var weighed, sum mat.Dense
		if err := ch.SolveTo(&weighed, rows); err != nil {
			return Told{}, err
		}
		sum.Mul(rows.T(), &weighed)
		for i := range n {
			for j := i; j < n; j++ {
				information.SetSym(i, j, information.At(i, j)+(sum.At(i, j)+sum.At(j, i))/2)
			}
		}
	}
	var ch mat.Cholesky
	ch.Factorize(information) // the prior's identity makes it positive
	var c mat.SymDense
	if err := ch.InverseTo(&c); err != nil {
		return Told{}, err
	}
	var left, cov mat.Dense
	left.Mul(o.m.root, &c)
	cov.Mul(&left, o.m.root.T())
	return o.read90(&cov), nil
}
