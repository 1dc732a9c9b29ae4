package assay

import (
	"fmt"
	"math"
	"slices"

	"sipsum/internal/unit"
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

func tooWide(foods []string) string {
	const why = "what its foods do not say leaves it open: measure the pH, it is one reading"
	if len(foods) == 0 {
		return why
	}
	return why + " (acids unknown of " + listed(foods) + ")"
}

// withholdReadings withholds what only a liquid has, and one that instruments can read.
func (c *Chemistry) withholdReadings(why string) {
	scale := unit.LimitOf("°Brix", "")
	switch {
	case why != "":
	case scale.Holds(c.Brix.High):
		return
	default:
		why = fmt.Sprintf("it may hold more than a refractometer reads: the scale ends at %g °Bx", scale.High)
	}
	c.TooDry = why
	for _, r := range []*Result{&c.Brix, &c.Density} {
		r.Unknown = true
		r.Mean, r.SD, r.Low, r.High, r.WithBounds, r.UpTo = math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN()
	}
	c.BrixAcid.withhold(why)
	c.BrixCorrected.withhold(why)
}
