package acid

import "math"

// Degas sets a solution's inorganic carbon to what it holds in equilibrium with
// a gas that dissolves co2 mol/kg as CO2(aq) (Henry's constant times the
// pressure of CO2), and gives that equilibrium; near is as in Solve. Air takes
// the fizz out of a soft drink and leaves the bicarbonate of a water, which
// cannot leave without an acid.
func (s *Solver) Degas(sol *Solution, co2 float64, near State) (State, error) {
	carbonic := Must("carbonic")
	sol.Acids[carbonic] = 0
	if err := s.load(sol); err != nil {
		return State{}, err
	}
	s.open(carbonic, co2)
	state, err := s.find(near)
	sol.Acids[carbonic] = s.active[len(s.active)-1].content(s.free) * sol.Solvent
	return state, err
}

// open adds an acid of which a gas keeps held mol/kg in the form without charge.
// Its reservoir has no end: a molecule that gives its proton away is replaced.
// With its total infinite, and its protons counted from the form without charge,
// the sums of the balance hold for it as they do for the others.
func (s *Solver) open(acid Index, held float64) {
	a := &s.medium.acids[acid]
	s.gamma.used[a.size] = true
	s.active = append(s.active, active{
		total: math.Inf(1), bare: float64(a.bare), size: a.size, open: true, held: held, forms: a.forms, pairs: a.pairs, binds: s.binds(a),
	})
}

// perWeight gives mol/kg for a unit of weight, when the acid's forms weigh all.
func (a *active) perWeight(all float64) float64 {
	if a.open {
		return a.held
	}
	return a.total / all
}

// weighFromZero takes an open acid's weights relative to the form without charge,
// and counts protons from there.
func (a *active) weighFromZero(activity *[4]float64, g *gammas) {
	none := int(-a.bare) // protons of the form without charge
	p, weight := float64(none), a.forms[none].beta*activity[none]*g.pow(none*none)
	from := func(t sums) sums {
		return sums{w: t.w / weight, wp: (t.wp - p*t.w) / weight, wpp: (t.wpp - 2*p*t.wp + p*p*t.w) / weight, wzz: t.wzz / weight}
	}
	a.single = from(a.single)
	for m := range a.paired {
		a.paired[m] = from(a.paired[m])
	}
}

// content gives all forms of an open acid together, in mol/kg.
func (a *active) content(free [metals]float64) float64 {
	all := a.single.w
	for m, f := range free {
		all += f * a.paired[m].w
	}
	return a.held * all
}
