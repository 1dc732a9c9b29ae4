package acid

import "math"

// Form is one form of an acid at equilibrium.
type Form struct {
	Acid    Index
	Protons int
	Metal   bool // paired with calcium or magnesium
	Charge  int
	MolKg   float64
}

// Forms lists every form at an equilibrium that Solve found, H⁺ and OH⁻ apart, so
// that the tests can add the charges up for themselves.
func (s *Solver) Forms(sol *Solution, state State) ([]Form, error) {
	if err := s.load(sol); err != nil {
		return nil, err
	}
	s.free = state.Free
	s.gamma.at(&s.medium.activity, min(state.Ionic, s.limit))
	if _, err := s.balance(-state.PH * math.Ln10); err != nil {
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
		bare, g := int(a.bare), &s.gamma.ions[a.size]
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

// Charge gives what is left of the charge balance at ln a(H⁺) = x and an ionic strength,
// and the slope that the solver steps by; co2 is what a gas keeps dissolved, mol/kg, of
// an open solution, 0 of a closed one.
func (s *Solver) Charge(sol *Solution, x, ionic, co2 float64) (charge, slope float64, err error) {
	if err := s.load(sol); err != nil {
		return 0, 0, err
	}
	if co2 > 0 {
		s.open(Must("carbonic"), co2)
	}
	s.startMetals(State{})
	s.gamma.at(&s.medium.activity, ionic)
	at, err := s.balance(x)
	return at.charge, at.slope, err
}
