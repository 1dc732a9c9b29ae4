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
func unsolvable(pot *ledger.Pot) string {
	const hundred = 100
	mass, protein := pot.Central(constituent.Mass), 0.0
	for row := range pot.Rows {
		if !titrated(pot, row) {
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
	case len(in.bare) > 0 && half > spanOf("widest").high:
		c.withholdPH("potassium unknown of " + listed(in.bare) + ": the pH is higher than its acids alone would make it; measure it")
	case in.hidden && c.PHMeter.Mean > sour: // solved as it stands in air
		switch c.Degassed = c.PHMeter; {
		case half > spanOf("widest").high:
			c.Degassed.withhold(tooWide(in.unknown))
		case in.impossible(c.PHMeter.Mean) != "":
			c.Degassed.withhold(in.impossible(c.PHMeter.Mean))
		}
		c.withholdPH("how much gas is in it nobody has stated: measure the pH, or say what is left with carbonate: {left: 3 g/l}")
	// guard: no impossible pH
	case in.impossible(c.PHMeter.Mean) != "":
		c.withhold(in.impossible(c.PHMeter.Mean))
	// guard: an open pH
	case half > spanOf("widest").high:
		low, high, why := c.PHMeter.Low, c.PHMeter.High, tooWide(in.unknown)
		if c.unbuffered() {
			why = hardlyBuffers
		}
		c.withhold(why)
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

const hardlyBuffers = "it hardly buffers, so that the water and a trace of acid decide its pH: measure it if it matters"

// unbuffered reports whether a liquid takes less base over the whole of its open pH than one
// that hardly buffers.
func (c *Chemistry) unbuffered() bool {
	const milli = 1000
	mmol := milli * c.Acidity[0].PerLitre.High / asGrams(1)
	return mmol < spanOf("hardly buffered").high*(c.PHMeter.High-c.PHMeter.Low)
}

// withholdUnbuffered withholds the pH of a liquid that hardly buffers, as a syrup of sugar
// or a spirit: a trace of anything decides it. What is made of waters and substances by
// formula has the pH that these make, and a food whose own has been published has that.
func (c *Chemistry) withholdUnbuffered(in ions, sure surely) {
	published := slices.ContainsFunc(in.restsOn, func(c Calibration) bool { return c.Group == "" })
	if sure.pH || in.plain || published || c.Capacity.Why != "" || c.Capacity.Mean >= spanOf("hardly buffered").high {
		return
	}
	capacity, ions := c.Capacity, c.StrongIons
	c.withholdPH(hardlyBuffers)
	c.Capacity, c.StrongIons, c.Curve = capacity, ions, nil
}

// impossible tells why a pH cannot be: a drink of foods is neither alkaline nor more acid
// than any food acid makes it, so an anion or a cation is missing from the tables.
func (in ions) impossible(pH float64) string {
	lowest, highest := spanOf("possible").low, max(spanOf("possible").high, in.highest)
	switch {
	case len(in.titrated) > 0: // the titration says between which pH it tells
	case !in.plain && pH > highest:
		return "there are more metals than acids to go with them: an acid is missing from the tables; measure the pH"
	case !in.plain && pH < lowest:
		return "there are more acids than any drink holds: a metal is missing from the tables; measure the pH"
	}
	return ""
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
