package chemistry

import (
	"math"
	"strings"

	"sipsum/internal/acidity"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
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
	// Protonated is what of the organic acids still has a carboxyl group with its proton,
	// mmol of molecules per litre at MeterCelsius.
	Protonated Estimate
	Density    composition.Result // g/ml at 20 °C
	Brix       composition.Result // °Bx, as a refractometer reads it
	TooDry     string             // why Brix is withheld, and Density unless its foods state one; empty if they are not
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
// where they are numbers, still bound it. Its draws are those for which equilibria are
// solved, the first acidity.ChemistryDraws of the run's, as far as foods are known: what
// nobody has stated widens the interval beyond them.
type Estimate struct {
	composition.Result
	Why string
}

// drawn reads an estimate off a column.
func drawn(m *composition.Meter, col []float64, unit string) Estimate {
	e := Estimate{Result: composition.Known(m.Of(col), unit)}
	e.Draws = col[1:]
	return e
}

// Liquid is a pot of which the chemistry is asked.
type Liquid struct {
	Pot      *ledger.Pot
	Celsius  float64        // at which it is served
	Read     acidity.Surely // what was read of it as it stands
	Degassed bool           // asks for the pH when the gas has left
	House    bool           // a house-made component: asks how it keeps
	Keeps    *drink.Keeps   // as the drink file says; nil if it does not
}

// Of works a liquid out as a solution.
func Of(lab *acidity.Laboratory, l Liquid) *Chemistry {
	brix, density := lab.Gauge.Brix(l.Pot), lab.Gauge.Density(l.Pot)
	in := lab.IonsOf(l.Pot, min(l.Pot.N, lab.Solved()))
	c := solve(lab, l, in, brix, density)
	if c.PHMeter.Why != "" {
		c.RestsOn = nil // what is not given rests on nothing
	}
	if l.Degassed && c.CO2.Mean > 0 {
		c.degas(in)
	}
	if l.House {
		c.Keeping = keepingOf(c, l)
	}
	return c
}

func solve(lab *acidity.Laboratory, l Liquid, in acidity.Ions, brix, density []float64) *Chemistry {
	m, pot, sure, n := &composition.Meter{}, l.Pot, l.Read, in.N
	c := &Chemistry{Celsius: l.Celsius, Density: composition.Known(m.Of(density), "g/ml"), Brix: composition.Known(m.Of(brix), "°Bx")}
	c.Brix.Draws, c.Density.Draws = brix[1:], density[1:]
	c.openWater(pot)
	dry := liquid.TooDry(pot)
	defer c.withholdReadings(dry, strings.HasPrefix(dry, liquid.Unstated) && liquid.NoVolume(pot) == "")
	gas := estimate.Ratio(pot.Total(constituent.CarbonDioxide), lab.Gauge.Volume(pot), acidity.PerLitre)
	c.CO2 = composition.Known(m.Of(gas), "g/l")
	c.CO2.Draws = gas[1:]
	why := acidity.Unsolvable(pot)
	if in.Hidden {
		c.CO2.Mean, c.CO2.SD, c.CO2.Low, c.CO2.High, c.CO2.Unknown = math.NaN(), math.NaN(), math.NaN(), math.NaN(), true
		c.CO2.Draws = nil
	}
	if dry != "" && why == "" && !sure.PH {
		why = dry + ": measure the pH"
		if !strings.HasPrefix(dry, liquid.Unstated) {
			why += " of its juice"
		}
	}
	alone := why != "" && !sure.PH && in.Alone(pot)
	if why != "" && !alone && (!sure.PH || pot.Central(constituent.Water) <= 0) {
		c.withhold(why)
		return c
	}
	a, err := solveDraws(in, pot, density, l.Celsius)
	if err != nil {
		c.withhold(err.Error() + "; measure the pH")
		return c
	}
	c.Unseen, c.RestsOn = in.Unseen(), in.RestsOn
	if a.pH != nil {
		c.PH = drawn(m, a.pH, "pH")
	} else {
		c.PH.withhold(a.why)
	}
	c.PHMeter = drawn(m, a.meter, "pH")
	c.Protonated = drawn(m, a.protonated, "mmol/l")
	defer c.withholdProtonated(in)
	for i, end := range acidity.EndPoints {
		c.Acidity = append(c.Acidity, Acidity{
			EndPoint: end, Per100g: drawn(m, a.per100g[i], "g/100 g"), PerLitre: drawn(m, a.perLitre[i], "g/l"),
		})
	}
	c.BrixAcid = drawn(m, estimate.Ratio(brix[:n], a.per100g[0], 1), "1")
	corrected := make([]float64, n)
	for d := range corrected {
		corrected[d] = solution.CorrectedBrix(brix[d], a.per100g[0][d])
	}
	c.BrixCorrected = drawn(m, corrected, "°Bx")
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
