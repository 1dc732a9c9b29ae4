package acid

import "math"

// Point is one point of a titration curve.
type Point struct {
	PH   float64
	Base float64 // mol of strong base added per kg of solvent; negative for acid
}

// Curve gives the base that takes the solution from pH to pH, in equal steps of
// pH from its own to the last.
func (s *Solver) Curve(sol *Solution, last float64, points int) ([]Point, error) {
	state, err := s.Solve(sol, State{})
	if err != nil {
		return nil, err
	}
	curve := make([]Point, points)
	for i := range curve {
		pH := state.PH + (last-state.PH)*float64(i)/float64(points-1)
		base, err := s.Base(sol, pH, state)
		if err != nil {
			return nil, err
		}
		curve[i] = Point{PH: pH, Base: base}
	}
	return curve, nil
}

// Capacity gives the buffer capacity at a pH: mol of strong base per kg of
// solvent and unit of pH.
func (s *Solver) Capacity(sol *Solution, pH float64, near State) (float64, error) {
	const half = 1e-3 // pH; the curve is smooth on this scale
	above, err := s.Base(sol, pH+half, near)
	if err != nil {
		return 0, err
	}
	below, err := s.Base(sol, pH-half, near)
	return (above - below) / (2 * half), err
}

// Form is one form of an acid at equilibrium.
type Form struct {
	Acid    Index
	Protons int
	Metal   bool // paired with calcium or magnesium
	Charge  int
	MolKg   float64
}

// Forms lists every form at an equilibrium that Solve found, H⁺ and OH⁻ apart.
// It is for looking at one solution, and allocates.
func (s *Solver) Forms(sol *Solution, state State) ([]Form, error) {
	if err := s.load(sol); err != nil {
		return nil, err
	}
	s.free = state.Free
	g := s.gammas(min(state.Ionic, s.limit))
	if _, err := s.balance(-state.PH*math.Ln10, &g); err != nil {
		return nil, err
	}
	h := math.Pow(10, -state.PH)
	var list []Form
	next := 0
	for i, n := range sol.Acids {
		if n == 0 {
			continue
		}
		a := &s.active[next]
		next++
		all := a.single.w
		for m, f := range s.free {
			all += f * a.paired[m].w
		}
		bare := int(a.bare)
		weight := func(f form, power int) float64 {
			return a.total / all * f.beta * math.Pow(h, float64(f.protons)) * g.pow(power-f.charge*f.charge)
		}
		for _, f := range a.forms {
			list = append(list, Form{Acid: Index(i), Protons: f.protons, Charge: f.charge, MolKg: weight(f, bare*bare)})
		}
		for m, pairs := range a.pairs {
			for _, f := range pairs {
				if s.free[m] > 0 {
					list = append(list, Form{Acid: Index(i), Protons: f.protons, Metal: true, Charge: f.charge, MolKg: s.free[m] * weight(f, bare*bare+metalPower)})
				}
			}
		}
	}
	return list, nil
}

// Degas sets a solution's inorganic carbon to what it holds in equilibrium with
// a gas that dissolves co2 mol/kg as CO2(aq) (Henry's constant times the
// pressure of CO2). Air takes the fizz out of a soft drink and leaves the
// bicarbonate of a water, which cannot leave without an acid.
func (s *Solver) Degas(sol *Solution, co2 float64) error {
	carbonic := Must("carbonic")
	near := State{}
	dissolved := func(total float64) (float64, error) {
		sol.Acids[carbonic] = total
		state, err := s.Solve(sol, near)
		if err != nil {
			return 0, err
		}
		near = state
		forms, err := s.Forms(sol, state)
		for _, f := range forms {
			if f.Acid == carbonic && f.Charge == 0 && !f.Metal {
				return f.MolKg, err
			}
		}
		return 0, err
	}
	// CO2(aq) rises with the carbon there is, and is never more than it.
	lo := co2 * sol.Solvent
	hi := lo + (math.Abs(sol.Strong) + 2*sol.Metals[Calcium] + 2*sol.Metals[Magnesium])
	for range manyIterations {
		if hi-lo <= chargeTol+1e-12*hi {
			break
		}
		mid := (lo + hi) / 2
		at, err := dissolved(mid)
		if err != nil {
			return err
		}
		if at < co2 {
			lo = mid
		} else {
			hi = mid
		}
	}
	_, err := dissolved(hi)
	return err
}
