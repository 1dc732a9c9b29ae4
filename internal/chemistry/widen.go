package chemistry

import (
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// widen lets the pH under the meter, and the acidity, be all that their unknown acids
// allow: what they are with none and with the most of these. Draws between the two would
// make a little of them look as unlikely as much.
func (c *Chemistry) widen(in acidity.Ions, pot *ledger.Pot) error {
	if !in.Open() {
		return nil
	}
	s, err := acid.NewSolver(acidity.MeterCelsius)
	if err != nil {
		return err
	}
	sol, mass := acid.New(0), pot.Central(constituent.Mass)
	if in.Unneutral > 0 { // as if their potassium were all that their acids can take
		in.Fill(sol, 0)
		acidity.AddStrong(sol, in.Unneutral)
		state, err := in.Solve(s, sol, acid.State{}, acidity.MeterCelsius)
		if err != nil {
			return err
		}
		c.PHMeter.reach(state.PH)
		c.Protonated.reach(protonatedIn(s, sol, mass, c.Density.Mean))
	}
	for _, nobody := range in.Nobody.Ends() {
		for _, vouched := range in.Vouched.Ends() {
			in.Fill(sol, 0)
			nobody(sol)
			vouched(sol)
			state, err := in.Solve(s, sol, acid.State{}, acidity.MeterCelsius)
			if err != nil {
				return err
			}
			c.PHMeter.reach(state.PH)
			c.Protonated.reach(protonatedIn(s, sol, mass, c.Density.Mean))
			if err := acidity.Degas(s, sol, state); err != nil {
				return err
			}
			for i := range c.Acidity {
				end, err := s.Titrate(sol, c.Acidity[i].EndPoint, state)
				if err != nil {
					return err
				}
				c.Acidity[i].reach(acidity.AsCitric(max(end.Base*sol.Solvent, 0))/mass, c.Density.Mean)
			}
		}
	}
	return nil
}

// openWater lets °Brix be also what it is if all that may be water or alcohol is water; the
// density has its bounds already (package liquid).
func (c *Chemistry) openWater(pot *ledger.Pot) {
	open, mass := liquid.OpenMass(pot), pot.Central(constituent.Mass)
	if open == 0 || mass == 0 {
		return
	}
	// guard: open water is not dissolved
	c.Brix.Low -= unit.Hundred * open / mass
	c.Brix.Low = max(c.Brix.Low, 0)
}

func (e *Estimate) reach(x float64) { e.Low, e.High = min(e.Low, x), max(e.High, x) }

// reach widens an acidity, in 100 g as in a litre of a density in g/ml.
func (a *Acidity) reach(per100g, density float64) {
	a.Per100g.reach(per100g)
	a.PerLitre.reach(per100g / unit.Hundred * density * acidity.PerLitre)
}

// withholdVague withholds an acidity, and what else hangs on how much acid there is, where
// the acids that nobody has stated leave it open.
func (c *Chemistry) withholdVague(in acidity.Ions) {
	foods := slices.Concat(in.Unknown, in.Untold)
	if len(foods) == 0 {
		return
	}
	first := c.Acidity[0].Per100g
	if (first.High-first.Low)/2 <= acidity.SpanOf("widest acidity").High*first.Mean {
		c.BrixAcid.reach(c.Brix.Mean / first.High)
		c.BrixAcid.reach(c.Brix.Mean / max(first.Low, HardlySour))
		return
	}
	why := "acids unknown of " + note.Listed(foods) + ": titrate it"
	bounds := slices.Clone(c.Acidity)
	c.withholdAcidity(why)
	for i, b := range bounds {
		c.Acidity[i].Per100g.Low, c.Acidity[i].Per100g.High = b.Per100g.Low, b.Per100g.High
		c.Acidity[i].PerLitre.Low, c.Acidity[i].PerLitre.High = b.PerLitre.Low, b.PerLitre.High
	}
	c.Capacity.withhold(why)
	c.StrongIons.withhold(why)
}
