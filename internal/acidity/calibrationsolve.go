package acidity

import (
	"math"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// reference is the liquid of which the pH of a food is known: the food itself, a solution
// of a dry food, or a brew.
type reference struct {
	in    Ions
	spare []float64 // mol of acid without a name, as citric, that it may hold besides
}

// gramOf is a gram of a food, with the water in which the pH of a dry one is read.
func (lab *Laboratory) gramOf(profile *food.Profile) *ledger.Pot {
	pot := lab.drawer.NewPot()
	pot.Pour(profile, lab.drawer.PerGram(profile), lab.Ens.Of(1), "")
	if pot.Central(constituent.Water) < SpanOf("dry food").High*pot.Central(constituent.Mass) {
		grams := SpanOf("solution of a dry food").High
		pot.Pour(lab.water, lab.drawer.PerGram(lab.water), lab.Ens.Of(grams), "")
	}
	return pot
}

func (lab *Laboratory) reference(pot *ledger.Pot, n int) *reference {
	return &reference{in: lab.IonsOf(pot, n), spare: lab.spareAcid(pot, n)}
}

// weakShare draws how much of a missing anion is a weak acid: all of it where it is
// protein.
func (lab *Laboratory) weakShare(f *food.Food, n int) []float64 {
	if takesUpAcid(f) {
		return estimate.Constant(n, 1)
	}
	return lab.within(SpanOf("weak share"), "weak share", f.ID)
}

// spareAcid gives how much acid without a name the first row of a pot may hold beside what
// is drawn of it, in mol of citric: nothing where the acidity has been titrated.
func (lab *Laboratory) spareAcid(pot *ledger.Pot, n int) []float64 {
	spare := make([]float64, n)
	if lab.moreAcidOf(pot.Rows[0].Profile, n) != nil {
		return spare
	}
	carrier, named := carrierOf(pot, 0)
	if !named || takesUpAcid(pot.Rows[0].Profile.Food) { // as much as its metals need, whatever its bound is
		estimate.Fill(spare, math.Inf(1))
		return spare
	}
	drawn := newIons(n)
	lab.addAcids(&drawn, pot, 0)
	for d := range spare {
		spare[d] = max(SpanOf("minor acids").High*carrier[d]-drawn.grams[Citric][d], 0) / constituent.Must(Citric).Molar
	}
	return spare
}

// acidities solves the pH of every draw.
func (l *reference) acidities() ([]float64, acid.State, error) {
	pH, near := make([]float64, l.in.N), acid.State{}
	err := l.in.Each(func(s *acid.Solver, sol *acid.Solution, own, _ acid.State, d int) error {
		state, err := l.in.Solve(s, sol, own, MeterCelsius)
		pH[d] = state.PH
		if d == 0 {
			near = state
		}
		return err
	})
	return pH, near, err
}

// solve finds what a gram lacks of a pH, draw by draw, and the strong ion at central values
// with none and with the most of its unknown acid.
func (c *calibration) solve(l *reference, pH []float64, near acid.State, weak []float64) error {
	err := EachDraw(l.in.N, func(s *acid.Solver, sol *acid.Solution, from, to int) error {
		l.in.Fill(sol, 0)
		near, err := s.Titrate(sol, pH[0], near) // each draw from the central one: any number of cores gives the same
		if err != nil {
			return err
		}
		for d := from; d < to; d++ {
			l.in.Fill(sol, d)
			state, err := s.Titrate(sol, pH[d], near)
			if err != nil {
				return err
			}
			if mol := min(weakAcid(sol, -state.Base, weak[d], pH[d])*sol.Solvent, l.spare[d]); mol > 0 {
				sol.Acids[acid.Must("citric")] += mol
				if state, err = s.Titrate(sol, pH[d], state); err != nil {
					return err
				}
				c.weak[d] = mol
			}
			c.strong[d] = atLeastNeutral(sol, state.Base) * sol.Solvent
		}
		return nil
	})
	if err != nil {
		return err
	}
	return c.solveEnds(l, pH[0])
}

// solveEnds finds the strong ion with none and with the most of the unknown acid.
func (c *calibration) solveEnds(l *reference, pH float64) error {
	c.none, c.most = c.strong[0], c.strong[0]
	ends, sol := l.in.Nobody.Ends(), acid.New(0)
	if c.by.atMost != nil {
		ends = l.in.Vouched.Ends()
	}
	if len(ends) < 2 {
		return nil
	}
	s, err := acid.NewSolver(MeterCelsius)
	if err != nil {
		return err
	}
	for i, strong := range []*float64{&c.none, &c.most} {
		l.in.Fill(sol, 0)
		sol.Acids[acid.Must("citric")] += c.weak[0]
		ends[i](sol)
		target := pH
		if c.by.group != "" || c.by.atMost != nil {
			state, err := l.in.Solve(s, sol, acid.State{}, MeterCelsius)
			if err != nil {
				return err
			}
			target = min(max(state.PH, c.by.low), c.by.high)
			if c.by.atMost != nil {
				target = min(state.PH, c.by.atMost[0])
			}
		}
		state, err := s.Titrate(sol, target, acid.State{})
		if err != nil {
			return err
		}
		*strong = state.Base * sol.Solvent
	}
	return nil
}

// weakAcid gives how much citric acid takes its share of a missing charge, mol/kg, and what
// no strong anion can take: a guide, the rest is titrated.
func weakAcid(sol *acid.Solution, missing, share, pH float64) float64 {
	if missing <= 0 {
		return 0
	}
	strong := min((1-share)*missing, max(sol.StrongIonDifference(), 0))
	return (missing - strong) / acid.All()[acid.Must("citric")].Given(pH)
}

// atLeastNeutral keeps a strong ion, mol/kg, from making a food hold more anions of strong
// acids than metals: no food holds mineral acid.
func atLeastNeutral(sol *acid.Solution, base float64) float64 {
	return max(base, min(-sol.StrongIonDifference(), 0))
}
