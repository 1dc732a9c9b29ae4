package chemistry

import (
	"math"

	"sipsum/internal/acidity"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
	"sipsum/internal/solution"
)

// Chemistry is what a liquid is as a solution.
type Chemistry struct {
	Celsius float64 // of PH
	PH      Estimate
	PHMeter Estimate // at MeterCelsius
	Acidity []Acidity
	Density composition.Result // g/ml at 20 °C
	Brix    composition.Result // °Bx, as a refractometer reads it
	TooDry  string             // why Density and Brix are withheld; empty if they are not
	// BrixCorrected is Brix with what the acid hides of it: the Brix value of juice.
	BrixCorrected Estimate
	// BrixAcid is °Brix over grams of titratable acidity per 100 g, as citric acid.
	BrixAcid   Estimate
	Capacity   Estimate // mmol of base per litre and unit of pH, at PHMeter
	StrongIons Estimate // mmol/l of charge: of metals less that of the anions of strong acids
	Curve      []CurvePoint
	Doses      []Dose                // only of what was read
	CO2        composition.Result    // g/l
	Degassed   Estimate              // PHMeter when the gas has left; only if asked and if there is gas
	RestsOn    []acidity.Calibration // published pH on which the pH rests
	Unseen     []string              // what weighs here and rests on constants that nobody has seen in print
	Water      *Water                // of a liquid that is hardly sour
	Keeping    *Keeping              // of house-made components
}

// Acidity is titratable acidity to an end point.
type Acidity struct {
	EndPoint float64  // pH
	Per100g  Estimate // g/100 g as citric acid
	PerLitre Estimate // g/l as citric acid
}

// Estimate is a figure that may be withheld: Why then says so, and Low and High,
// where they are numbers, still bound it.
type Estimate struct {
	composition.Result
	Why string
}

// Of works a pot out as a solution. celsius is its serving temperature, sure
// what was read of it as it stands.
func Of(lab *acidity.Laboratory, pot *ledger.Pot, celsius float64, sure acidity.Surely) *Chemistry {
	c := solve(lab, pot, celsius, sure)
	if c.PHMeter.Why != "" {
		c.RestsOn = nil // what is not given rests on nothing
	}
	return c
}

func solve(lab *acidity.Laboratory, pot *ledger.Pot, celsius float64, sure acidity.Surely) *Chemistry {
	m := &composition.Meter{}
	brix, density := lab.Gauge.Brix(pot), lab.Gauge.Density(pot)
	c := &Chemistry{Celsius: celsius, Density: composition.Known(m.Of(density), "g/ml"), Brix: composition.Known(m.Of(brix), "°Bx")}
	defer c.withholdReadings(liquid.TooDry(pot))
	c.CO2 = composition.Known(m.Of(estimate.Ratio(pot.Total(constituent.CarbonDioxide), lab.Gauge.Volume(pot), acidity.PerLitre)), "g/l")
	why := acidity.Unsolvable(pot)
	n := min(pot.N, acidity.ChemistryDraws+1)
	in := lab.IonsOf(pot, n)
	if in.Hidden {
		c.CO2.Mean, c.CO2.SD, c.CO2.Low, c.CO2.High, c.CO2.Unknown = math.NaN(), math.NaN(), math.NaN(), math.NaN(), true
	}
	if solid := liquid.TooDry(pot); solid != "" && why == "" && !sure.PH {
		why = solid + ": measure the pH of its juice"
	}
	alone := why != "" && !sure.PH && in.Alone(pot)
	if why != "" && !alone && (!sure.PH || pot.Central(constituent.Water) <= 0) {
		c.withhold(why)
		return c
	}
	a, err := solveDraws(in, pot, density, celsius)
	if err != nil {
		c.withhold(err.Error() + "; measure the pH")
		return c
	}
	c.Unseen, c.RestsOn = in.Unseen(), in.RestsOn
	if a.pH != nil {
		c.PH = Estimate{Result: composition.Known(m.Of(a.pH), "pH")}
	} else {
		c.PH.withhold(a.why)
	}
	c.PHMeter = Estimate{Result: composition.Known(m.Of(a.meter), "pH")}
	for i, end := range acidity.EndPoints {
		c.Acidity = append(c.Acidity, Acidity{
			EndPoint: end, Per100g: Estimate{Result: composition.Known(m.Of(a.per100g[i]), "g/100 g")}, PerLitre: Estimate{Result: composition.Known(m.Of(a.perLitre[i]), "g/l")},
		})
	}
	c.BrixAcid = Estimate{Result: composition.Known(m.Of(estimate.Ratio(brix[:n], a.per100g[0], 1)), "1")}
	corrected := make([]float64, n)
	for d := range corrected {
		corrected[d] = solution.CorrectedBrix(brix[d], a.per100g[0][d])
	}
	c.BrixCorrected = Estimate{Result: composition.Known(m.Of(corrected), "°Bx")}
	least := min(a.per100g[0][0], c.Acidity[0].Per100g.Low)
	// guard: a ratio needs acid
	if least < HardlySour {
		c.BrixAcid.withhold("there is hardly any acid to divide by")
	}
	if alone { // its pH is published, what its protein does to another is not known
		meter := c.PHMeter
		c.withhold(why)
		if (meter.High-meter.Low)/2 <= acidity.SpanOf("widest").High {
			c.PHMeter = meter
		}
		return c
	}
	if err := c.widen(in, pot); err != nil {
		c.withhold(err.Error())
		return c
	}
	c.alongside()
	c.withholdUnknown(in, why, sure)
	if c.PHMeter.Why != "" {
		return c
	}
	if why != "" { // what protein takes up between the pH that was read and another nobody knows
		c.Capacity.withhold(why)
		c.StrongIons.withhold(why)
		return c
	}
	if c.withholdVague(in); c.Capacity.Why == "" {
		if err := c.buffer(lab, in, pot, a.meter, sure); err != nil {
			c.withhold(err.Error())
			return c
		}
		if in.Plain { // of foods nobody knows all of the calcium
			if c.Water, err = c.water(lab, in, pot); err != nil {
				c.withhold(err.Error())
			}
		}
		c.withholdUnbuffered(in, sure)
	}
	return c
}

// alongside lets the pH at serving temperature be as open as that under the meter.
func (c *Chemistry) alongside() {
	if c.PH.Why == "" && c.PHMeter.Why == "" {
		apart := c.PH.Mean - c.PHMeter.Mean
		c.PH.reach(c.PHMeter.Low + apart)
		c.PH.reach(c.PHMeter.High + apart)
	}
}

// HardlySour is the titratable acidity, in g/100 g, below which a burette reads none: a
// drop of 0.05 ml of 0.1 mol/l on 10 g is 0.003.
const HardlySour = 0.003
