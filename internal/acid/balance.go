package acid

import "math"

// active is an acid that is present, with the sums of its forms' weights at the
// present pH and ionic strength.
type active struct {
	total  float64 // mol/kg; +Inf of an open acid
	bare   float64 // charge of the bare form
	size   int     // which activity coefficients its ions have
	charge float64 // mol/kg: of all of it with every proton off; 0 of an open acid
	open   bool    // in exchange with a gas
	held   float64 // mol/kg of an open acid's form without charge, which the gas keeps there
	forms  []form
	pairs  [metals][]form
	binds  bool         // a metal that is present
	single sums         // forms without a metal
	paired [metals]sums // per mol/kg of the free metal
}

// sums of weights: all, times protons, times protons squared, times charge
// squared.
type sums struct{ w, wp, wpp, wzz float64 }

// balance is the state of the charges at a pH and an ionic strength.
type balance struct {
	charge float64 // mol/kg
	slope  float64 // of charge by ln a(H⁺)
	ionic  float64 // the ionic strength that the forms make, mol/kg
}

// load takes a solution in, per kg of solvent, and leaves out what is absent.
func (s *Solver) load(sol *Solution) error {
	if err := sol.solvable(); err != nil {
		return err
	}
	perKg := 1 / sol.Solvent
	s.strong, s.spread = sol.Strong*perKg, sol.Background*perKg
	for m := range s.metal {
		s.metal[m] = sol.Metals[m] * perKg
	}
	s.active, s.spare = s.active[:0], s.spare[:0]
	clear(s.gamma.used)
	for i, n := range sol.Acids {
		if n == 0 {
			continue
		}
		a := &s.medium.acids[i]
		bare := float64(a.bare)
		s.gamma.used[a.size] = true
		s.active = append(s.active, active{
			total: n * perKg, bare: bare, size: a.size, charge: n * perKg * bare, forms: a.forms, pairs: a.pairs, binds: s.binds(a),
		})
	}
	if sol.Ethanol > 0 {
		s.weaken(min(sol.Ethanol*perKg, s.highestEthanol))
	}
	return nil
}

// binds reports whether an acid pairs with a metal that is present.
func (s *Solver) binds(a *mediumAcid) bool {
	for m, total := range s.metal {
		if total > 0 && len(a.pairs[m]) > 0 {
			return true
		}
	}
	return false
}

const percent = 100

// weaken shifts carboxylic constants for the share of ethanol in the solvent.
func (s *Solver) weaken(share float64) {
	factor := math.Pow(10, s.carboxylShift*share*percent)
	powers := [...]float64{1, factor, factor * factor, factor * factor * factor}
	changed := func(list []form) []form {
		start := len(s.spare)
		for _, f := range list {
			f.beta *= powers[f.shift]
			s.spare = append(s.spare, f)
		}
		return s.spare[start:len(s.spare):len(s.spare)]
	}
	for i := range s.active {
		a := &s.active[i]
		a.forms = changed(a.forms)
		for m := range a.pairs {
			a.pairs[m] = changed(a.pairs[m])
		}
	}
}

// balance weighs every form at ln a(H⁺) = x, shares the metals out, and adds the
// charges up, with the activity coefficients that the solver has.
func (s *Solver) balance(x float64) (balance, error) {
	if x != s.x { // a titration stays at its pH
		s.x, s.h = x, math.Exp(x)
	}
	h := s.h
	activity := [...]float64{1, h, h * h, h * h * h}
	for i := range s.active {
		a := &s.active[i]
		g := &s.gamma.ions[a.size]
		a.single = sums{w: 1, wzz: a.bare * a.bare} // the bare form
		a.single.weigh(a.forms[1:], &activity, g)
		if a.binds {
			for m, total := range s.metal {
				if total > 0 {
					a.paired[m] = sums{}
					a.paired[m].weigh(a.pairs[m], &activity, g)
				}
			}
		}
		if a.open {
			a.weighFromZero(&activity, g)
		}
	}
	if err := s.shareMetals(); err != nil {
		return balance{}, err
	}
	proton, hydroxide := s.waterIons(h)
	sum := balance{charge: s.strong + proton - hydroxide, slope: proton + hydroxide, ionic: s.spread + (proton+hydroxide)/2}
	var cross [metals]float64 // covariance of bound protons and bound metal
	curve := s.free           // variance of each metal
	mixed := 0.0              // covariance of the two metals
	for i := range s.active {
		a := &s.active[i]
		all := a.single
		if a.binds {
			all = a.withPairs(&s.free)
		}
		scale := a.perWeight(all.w)
		protons := scale * all.wp
		if a.binds {
			var bound [metals]float64
			for m, f := range s.free {
				if f > 0 {
					bound[m] = scale * f * a.paired[m].w
					cross[m] += scale*f*a.paired[m].wp - protons*bound[m]/a.total
					curve[m] += bound[m] - bound[m]*bound[m]/a.total
				}
			}
			mixed -= bound[Calcium] * bound[Magnesium] / a.total
		}
		sum.charge += a.charge + protons
		sum.slope += scale*all.wpp - protons*protons/a.total
		sum.ionic += scale * all.wzz / 2
	}
	for m, total := range s.metal {
		sum.charge += metalCharge * total
		sum.ionic += metalPower * s.free[m] / 2
	}
	sum.slope -= quadratic(cross, curve, mixed)
	return sum, nil
}

// Protonated gives the molecules that still have a carboxyl group with its proton, in mol
// per kg of solvent, of what was solved last. Groups that a titration found (sites) belong to
// no molecule, and phosphoric acid has no carboxyl group: neither counts.
func (s *Solver) Protonated() float64 {
	activity := [...]float64{1, s.h, s.h * s.h, s.h * s.h * s.h}
	sum := 0.0
	for i := range s.active {
		a := &s.active[i]
		if a.open {
			continue
		}
		g, all := &s.gamma.ions[a.size], a.single
		weight := carrying(a.forms, &activity, g)
		if a.binds {
			all = a.withPairs(&s.free)
			for m, f := range s.free {
				weight += f * carrying(a.pairs[m], &activity, g)
			}
		}
		sum += a.perWeight(all.w) * weight
	}
	return sum
}

// carrying weighs the forms that have a carboxyl group with its proton.
func carrying(forms []form, activity *[4]float64, g *gammas) float64 {
	weight := 0.0
	for _, f := range forms {
		if f.shift > 0 {
			weight += f.beta * activity[f.protons&3] * g.pow(f.power)
		}
	}
	return weight
}

// withPairs gives the sums over all forms, those with a metal included.
func (a *active) withPairs(free *[metals]float64) sums {
	all := a.single
	for m, f := range free {
		if f > 0 {
			p := &a.paired[m]
			all.w += f * p.w
			all.wp += f * p.wp
			all.wpp += f * p.wpp
			all.wzz += f * p.wzz
		}
	}
	return all
}

// waterIons gives mol/kg of H⁺ and of OH⁻ at an activity of H⁺.
func (s *Solver) waterIons(h float64) (proton, hydroxide float64) {
	return h / s.gamma.proton, s.medium.kw / h / s.gamma.ions[common].pow(1)
}

// metalPower is the power of g in the activity coefficient of a metal.
const metalPower = metalCharge * metalCharge

// weigh adds the weights of forms.
func (t *sums) weigh(forms []form, activity *[4]float64, g *gammas) {
	all := *t
	for i := range forms {
		f := &forms[i]
		w := f.beta * activity[f.protons&3] * g.pow(f.power)
		all.w += w
		all.wp += f.p * w
		all.wpp += f.pp * w
		all.wzz += f.zz * w
	}
	*t = all
}

// quadratic gives cᵀ·H⁻¹·c: what the metals' own response takes off the slope.
func quadratic(c, diagonal [metals]float64, off float64) float64 {
	a, b := diagonal[Calcium], diagonal[Magnesium]
	switch {
	case a > 0 && b > 0:
		return (b*c[Calcium]*c[Calcium] - 2*off*c[Calcium]*c[Magnesium] + a*c[Magnesium]*c[Magnesium]) / (a*b - off*off)
	case a > 0:
		return c[Calcium] * c[Calcium] / a
	case b > 0:
		return c[Magnesium] * c[Magnesium] / b
	}
	return 0
}
