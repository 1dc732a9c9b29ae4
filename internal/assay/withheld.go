package assay

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// withhold keeps pH and acidity from being printed: what is unknown may lie
// outside any interval that the known part has.
func (c *Chemistry) withhold(why string) {
	c.withholdPH(why)
	c.withholdAcidity(why)
}

func (c *Chemistry) withholdAcidity(why string) {
	c.BrixAcid.withhold(why)
	c.BrixCorrected.withhold(why)
	if c.Acidity == nil {
		for _, end := range endPoints {
			c.Acidity = append(c.Acidity, Acidity{EndPoint: end})
		}
	}
	for i := range c.Acidity {
		c.Acidity[i].Per100g.withhold(why)
		c.Acidity[i].PerLitre.withhold(why)
	}
}

func (c *Chemistry) withholdPH(why string) {
	for _, e := range []*Estimate{&c.PH, &c.PHMeter, &c.Capacity, &c.StrongIons} {
		e.withhold(why)
	}
}

func (e *Estimate) withhold(why string) {
	e.Why, e.Unknown = why, true
	e.Mean, e.SD, e.Low, e.High = math.NaN(), math.NaN(), math.NaN(), math.NaN()
}

// unsolvable tells why a pot can have no pH from its composition, if so. The protein of
// what was titrated is in its titration.
func (w *walk) unsolvable(pot *ledger.Pot) string {
	const hundred = 100
	mass, protein := pot.Central(constituent.Mass), 0.0
	for row := range pot.Rows {
		if !w.titrated(pot, row) {
			protein += pot.Of(row, constituent.Protein)[0]
		}
	}
	switch limit := spanOf("protein").high; {
	case mass <= 0 || pot.Central(constituent.Water) <= 0:
		return "there is no water in it"
	// guard: protein buffers
	case hundred*protein/mass > limit:
		return fmt.Sprintf("%.1f g of protein in 100 g buffer as its acids do: no pH from composition above %g g; titrate it", hundred*protein/mass, limit)
	}
	return ""
}

// surely is what was read of a pot as it stands.
type surely struct{ pH, acidity bool }

// withholdUnknown withholds what neither composition nor reading tells. protein says
// why the composition does not, if so.
func (c *Chemistry) withholdUnknown(in ions, protein string, sure surely) {
	switch half := (c.PHMeter.High - c.PHMeter.Low) / 2; {
	case sure.pH && protein != "":
		c.PH.withhold(protein)
		if !sure.acidity {
			c.withholdAcidity(protein)
		}
	case sure.pH:
	case len(in.bare) > 0:
		c.withholdPH("potassium unknown of " + listed(in.bare) + ": the pH is higher than its acids alone would make it; measure it")
	case in.lacksAcid(c.PHMeter.Mean) != "":
		c.withhold(in.lacksAcid(c.PHMeter.Mean))
	// guard: an open pH
	case half > spanOf("widest").high:
		low, high := c.PHMeter.Low, c.PHMeter.High
		c.withhold(tooWide(in.unknown))
		c.PHMeter.Low, c.PHMeter.High = low, high
	}
	for _, t := range in.titrated {
		c.withholdBeyond(t.titration)
	}
}

// withholdBeyond keeps a titration from speaking of a pH at which nobody has read: the
// pH is only bounded there, and an end point beyond it has no acidity.
func (c *Chemistry) withholdBeyond(t *titration) {
	beyond := spanOf("beyond titration").high
	low, high := c.PHMeter.Low, c.PHMeter.High
	const way = "go on with the titration, with acid to lower pH and base to higher"
	switch {
	case low < t.lowest-beyond:
		c.withholdPH(fmt.Sprintf("it is more acid than %s was titrated (down to pH %.2f): %s", t.of, t.lowest, way))
		c.PHMeter.High = max(high, t.lowest)
	case high > t.highest+beyond:
		c.withholdPH(fmt.Sprintf("it is less acid than %s was titrated (up to pH %.2f): %s", t.of, t.highest, way))
		c.PHMeter.Low = min(low, t.highest)
	}
	for i, a := range c.Acidity {
		if a.EndPoint > t.highest+beyond {
			why := fmt.Sprintf("%s was titrated up to pH %.2f only", t.of, t.highest)
			c.Acidity[i].Per100g.withhold(why)
			c.Acidity[i].PerLitre.withhold(why)
			if i == 0 {
				c.BrixAcid.withhold(why)
				c.BrixCorrected.withhold(why)
			}
		}
	}
}

func tooWide(foods []string) string {
	const why = "what its foods do not say leaves it open: measure the pH, it is one reading"
	if len(foods) == 0 {
		return why
	}
	return why + " (acids unknown of " + listed(foods) + ")"
}

func listed(foods []string) string {
	slices.Sort(foods)
	return strings.Join(slices.Compact(foods), ", ")
}

// unseen lists what a pH rests on that nobody has seen in print: acids from memory
// that make up at least 5 % of the acid, by equivalents at central values, and
// the uptake of protein.
func (in ions) unseen() []string {
	const weighty = 0.05
	total, names := 0.0, []string(nil)
	equivalents := func(a acid.Acid) float64 {
		if a.Constituent == "" {
			return 0
		}
		return in.grams[a.Constituent][0] / a.Equivalent()
	}
	for _, a := range acid.All() {
		total += equivalents(a)
	}
	for _, a := range acid.All() {
		if a.FromMemory() && equivalents(a) >= weighty*total && total > 0 {
			names = append(names, a.Name)
		}
	}
	if in.protein {
		names = append(names, "milk protein")
	}
	return names
}
