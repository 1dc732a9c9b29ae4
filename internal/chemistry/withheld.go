package chemistry

import (
	"fmt"
	"math"
	"slices"

	"sipsum/internal/acidity"
	"sipsum/internal/composition"
	"sipsum/internal/note"
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
		for _, end := range acidity.EndPoints {
			c.Acidity = append(c.Acidity, Acidity{EndPoint: end})
		}
	}
	for i := range c.Acidity {
		c.Acidity[i].Per100g.withhold(why)
		c.Acidity[i].PerLitre.withhold(why)
	}
}

func (c *Chemistry) withholdPH(why string) {
	for _, e := range []*Estimate{&c.PH, &c.PHMeter, &c.Capacity, &c.StrongIons, &c.Protonated} {
		e.withhold(why)
	}
}

func (e *Estimate) withhold(why string) {
	e.Why, e.Unknown, e.Draws = why, true, nil
	e.Mean, e.SD, e.Low, e.High = math.NaN(), math.NaN(), math.NaN(), math.NaN()
}

// withholdUnknown withholds what neither composition nor reading tells. protein says
// why the composition does not, if so.
func (c *Chemistry) withholdUnknown(in acidity.Ions, protein string, sure acidity.Surely) {
	switch half := (c.PHMeter.High - c.PHMeter.Low) / 2; {
	case sure.PH && protein != "":
		c.PH.withhold(protein)
		if !sure.Acidity {
			c.withholdAcidity(protein)
		}
	case sure.PH:
	case len(in.Bare) > 0 && half > acidity.SpanOf("widest").High:
		c.withholdPH("potassium unknown of " + note.Listed(in.Bare) + ": the pH is higher than its acids alone would make it; measure it")
	case in.Hidden && c.PHMeter.Mean > acidity.Sour: // solved as it stands in air
		switch c.Degassed = c.PHMeter; {
		case half > acidity.SpanOf("widest").High:
			c.Degassed.withhold(tooWide(in.Unknown))
		case in.Impossible(c.PHMeter.Mean) != "":
			c.Degassed.withhold(in.Impossible(c.PHMeter.Mean))
		}
		c.withholdPH("how much gas is in it nobody has stated: measure the pH, or say what is left with carbonate: {left: 3 g/l}")
	// guard: no impossible pH
	case in.Impossible(c.PHMeter.Mean) != "":
		c.withhold(in.Impossible(c.PHMeter.Mean))
	// guard: an open pH
	case half > acidity.SpanOf("widest").High:
		low, high, why := c.PHMeter.Low, c.PHMeter.High, tooWide(in.Unknown)
		if c.unbuffered() {
			why = HardlyBuffers
		}
		c.withhold(why)
		c.PHMeter.Low, c.PHMeter.High = low, high
	}
	for _, t := range in.Titrated {
		c.withholdBeyond(t.Titration)
	}
}

// withholdBeyond keeps a titration from speaking of a pH at which nobody has read: the
// pH is only bounded there, and an end point beyond it has no acidity.
func (c *Chemistry) withholdBeyond(t *acidity.Titration) {
	beyond := acidity.SpanOf("beyond titration").High
	low, high := c.PHMeter.Low, c.PHMeter.High
	const way = "go on with the titration, with acid to lower pH and base to higher"
	switch {
	case low < t.Lowest-beyond:
		c.withholdPH(fmt.Sprintf("it is more acid than %s was titrated (down to pH %.2f): %s", t.Of, t.Lowest, way))
		c.PHMeter.High = max(high, t.Lowest)
	case high > t.Highest+beyond:
		c.withholdPH(fmt.Sprintf("it is less acid than %s was titrated (up to pH %.2f): %s", t.Of, t.Highest, way))
		c.PHMeter.Low = min(low, t.Highest)
	}
	for i, a := range c.Acidity {
		if a.EndPoint > t.Highest+beyond {
			why := fmt.Sprintf("%s was titrated up to pH %.2f only", t.Of, t.Highest)
			c.Acidity[i].Per100g.withhold(why)
			c.Acidity[i].PerLitre.withhold(why)
			if i == 0 {
				c.BrixAcid.withhold(why)
				c.BrixCorrected.withhold(why)
			}
		}
	}
}

// HardlyBuffers is why the pH of pure syrups and spirits is withheld.
const HardlyBuffers = "it hardly buffers, so that the water and a trace of acid decide its pH: measure it if it matters"

// unbuffered reports whether a liquid takes less base over the whole of its open pH than one
// that hardly buffers.
func (c *Chemistry) unbuffered() bool {
	const milli = 1000
	mmol := milli * c.Acidity[0].PerLitre.High / acidity.AsGrams(1)
	return mmol < acidity.SpanOf("hardly buffered").High*(c.PHMeter.High-c.PHMeter.Low)
}

// withholdUnbuffered withholds the pH of a liquid that hardly buffers, as a syrup of sugar
// or a spirit: a trace of anything decides it. What is made of waters and substances by
// formula has the pH that these make, and a food whose own has been published has that.
func (c *Chemistry) withholdUnbuffered(in acidity.Ions, sure acidity.Surely) {
	published := slices.ContainsFunc(in.RestsOn, func(c acidity.Calibration) bool { return c.Group == "" })
	if sure.PH || in.Plain || published || c.Capacity.Why != "" || c.Capacity.Mean >= acidity.SpanOf("hardly buffered").High {
		return
	}
	capacity, ions := c.Capacity, c.StrongIons
	c.withholdPH(HardlyBuffers)
	c.Capacity, c.StrongIons, c.Curve = capacity, ions, nil
}

func tooWide(foods []string) string {
	const why = "what its foods do not say leaves it open: measure the pH, it is one reading"
	if len(foods) == 0 {
		return why
	}
	return why + " (acids unknown of " + note.Listed(foods) + ")"
}

// withholdReadings withholds what only a liquid has, and one that instruments can read.
// A density that its foods state is known, whatever is not.
func (c *Chemistry) withholdReadings(why string, dense bool) {
	scale := unit.LimitOf("°Brix", "")
	switch {
	case why != "":
	case scale.Holds(c.Brix.High):
		return
	default:
		why = fmt.Sprintf("it may hold more than a refractometer reads: the scale ends at %g °Bx", scale.High)
	}
	c.TooDry = why
	for _, r := range []*composition.Result{&c.Brix, &c.Density} {
		if r == &c.Density && dense {
			continue
		}
		r.Unknown = true
		r.Mean, r.SD, r.Low, r.High, r.WithBounds, r.UpTo = math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN()
	}
	c.BrixAcid.withhold(why)
	c.BrixCorrected.withhold(why)
}
