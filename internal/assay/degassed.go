package assay

import (
	"sipsum/internal/acid"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// degas adds the pH, at MeterCelsius, when the gas has left: a closed bottle holds all
// of its carbon dioxide, an open glass comes to what air keeps in it.
func (c *Chemistry) degas(lab *laboratory, pot *ledger.Pot) {
	if c.PHMeter.Why != "" {
		c.Degassed.withhold(c.PHMeter.Why)
		return
	}
	air := spanOf("air").high * solution.CO2Solubility(MeterCelsius)
	in := lab.ionsOf(pot, min(pot.N, chemistryDraws+1))
	pH := make([]float64, in.n)
	err := in.each(func(s *acid.Solver, sol *acid.Solution, near, _ acid.State, d int) error {
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
	c.Degassed = Estimate{Result: known((&meter{}).Of(pH), "pH")}
}
