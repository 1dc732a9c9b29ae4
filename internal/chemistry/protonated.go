package chemistry

import (
	"sipsum/internal/acid"
	"sipsum/internal/acidity"
)

// protonatedIn gives mmol of molecules with a protonated carboxyl group in a litre of what a
// solver solved last: sol is what some grams of a density in g/ml hold.
func protonatedIn(s *acid.Solver, sol *acid.Solution, grams, density float64) float64 {
	const milli = 1000
	return milli * s.Protonated() * sol.Solvent / grams * density * acidity.PerLitre
}

// withholdProtonated withholds the molecules where the pH is withheld or how much acid there
// is stays open, and where a titration found groups and no molecules.
func (c *Chemistry) withholdProtonated(in acidity.Ions) {
	switch {
	case c.Protonated.Why != "":
	case c.PHMeter.Why != "":
		c.Protonated.withhold(c.PHMeter.Why)
	case len(c.Acidity) > 0 && c.Acidity[0].Per100g.Why != "":
		c.Protonated.withhold(c.Acidity[0].Per100g.Why)
	case len(in.Titrated) > 0:
		c.Protonated.withhold("a titration counts groups that give a proton, not molecules")
	}
}
