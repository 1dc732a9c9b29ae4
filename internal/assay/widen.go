package assay

import (
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// widen lets the pH under the meter, and the acidity, be all that their unknown acids
// allow: what they are with none and with the most of these. Draws between the two would
// make a little of them look as unlikely as much.
func (c *Chemistry) widen(in ions, pot *ledger.Pot) error {
	if !in.open() {
		return nil
	}
	s, err := acid.NewSolver(MeterCelsius)
	if err != nil {
		return err
	}
	sol, mass := acid.New(0), pot.Central(constituent.Mass)
	if in.unneutral > 0 { // as if their potassium were all that their acids can take
		in.fill(sol, 0)
		addStrong(sol, in.unneutral)
		state, err := in.solve(s, sol, acid.State{}, MeterCelsius)
		if err != nil {
			return err
		}
		c.PHMeter.reach(state.PH)
	}
	for _, nobody := range in.nobody.ends() {
		for _, vouched := range in.vouched.ends() {
			in.fill(sol, 0)
			nobody(sol)
			vouched(sol)
			state, err := in.solve(s, sol, acid.State{}, MeterCelsius)
			if err != nil {
				return err
			}
			c.PHMeter.reach(state.PH)
			if err := degas(s, sol, state); err != nil {
				return err
			}
			for i := range c.Acidity {
				end, err := s.Titrate(sol, c.Acidity[i].EndPoint, state)
				if err != nil {
					return err
				}
				c.Acidity[i].reach(asCitric(max(end.Base*sol.Solvent, 0))/mass, c.Density.Mean)
			}
		}
	}
	return nil
}

func (e *Estimate) reach(x float64) { e.Low, e.High = min(e.Low, x), max(e.High, x) }

// reach widens an acidity, in 100 g as in a litre of a density in g/ml.
func (a *Acidity) reach(per100g, density float64) {
	a.Per100g.reach(per100g)
	a.PerLitre.reach(per100g / unit.Hundred * density * perLitre)
}

// withholdVague withholds an acidity, and what else hangs on how much acid there is, where
// the acids that nobody has stated leave it open.
func (c *Chemistry) withholdVague(in ions) {
	foods := slices.Concat(in.unknown, in.untold)
	if len(foods) == 0 {
		return
	}
	first := c.Acidity[0].Per100g
	if (first.High-first.Low)/2 <= spanOf("widest acidity").high*first.Mean {
		c.BrixAcid.reach(c.Brix.Mean / first.High)
		c.BrixAcid.reach(c.Brix.Mean / max(first.Low, HardlySour))
		return
	}
	why := "acids unknown of " + listed(foods) + ": titrate it"
	bounds := slices.Clone(c.Acidity)
	c.withholdAcidity(why)
	for i, b := range bounds {
		c.Acidity[i].Per100g.Low, c.Acidity[i].Per100g.High = b.Per100g.Low, b.Per100g.High
		c.Acidity[i].PerLitre.Low, c.Acidity[i].PerLitre.High = b.PerLitre.Low, b.PerLitre.High
	}
	c.Capacity.withhold(why)
	c.StrongIons.withhold(why)
}
