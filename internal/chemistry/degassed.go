package chemistry

import (
	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/composition"
	"sipsum/internal/solution"
)

// degas adds the pH, at MeterCelsius, when the gas has left: a closed bottle holds all
// of its carbon dioxide, an open glass comes to what air keeps in it.
func (c *Chemistry) degas(in acidity.Ions) {
	if c.PHMeter.Why != "" {
		c.Degassed.withhold(c.PHMeter.Why)
		return
	}
	air := acidity.SpanOf("air").High * solution.CO2Solubility(acidity.MeterCelsius)
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
	c.Degassed = drawn(&composition.Meter{}, pH, "pH")
}
