package chemistry

import (
	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/composition"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// Degas adds the pH, at MeterCelsius, when the gas has left: a closed bottle holds all
// of its carbon dioxide, an open glass comes to what air keeps in it.
func (c *Chemistry) Degas(lab *acidity.Laboratory, pot *ledger.Pot) {
	if c.PHMeter.Why != "" {
		c.Degassed.withhold(c.PHMeter.Why)
		return
	}
	air := acidity.SpanOf("air").High * solution.CO2Solubility(acidity.MeterCelsius)
	in := lab.IonsOf(pot, min(pot.N, acidity.ChemistryDraws+1))
	pH := make([]float64, in.N)
	err := in.Each(func(s *acid.Solver, sol *acid.Solution, near, _ acid.State, d int) error {
		closed, err := s.Solve(sol, near)
		if err != nil {
			return err
		}
		open, err := s.Degas(sol, air, closed)
		if err != nil {
			return err
		}
		pH[d] = open.PH
		return nil
	})
	if err != nil {
		c.Degassed.withhold(err.Error())
		return
	}
	c.Degassed = Estimate{Result: composition.Known((&composition.Meter{}).Of(pH), "pH")}
}
