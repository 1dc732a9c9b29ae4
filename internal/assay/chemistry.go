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

// Chemistry is what a liquid is as a solution.
type Chemistry struct {
	Celsius float64 // of PH
	PH      Estimate
	PHMeter Estimate // at MeterCelsius
	Acidity []Acidity
	Brix    Result // °Bx, as a refractometer reads it
	// BrixAcid is °Brix over grams of titratable acidity per 100 g, as citric acid.
	BrixAcid Estimate
	CO2      Result   // g/l
	Unseen   []string // what weighs here and rests on constants that nobody has seen in print
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
	Result
	Why string
}

// MeterCelsius is the temperature of a pH meter's table and of titrations.
const MeterCelsius = 25.0

// endPoints of titratable acidity: IFU and AOAC 8.1 first, OIV and RSK 7.0, and
// 8.2 of coffee laboratories.
var endPoints = []float64{8.1, 7.0, 8.2}

// chemistryDraws is how many draws the equilibria are solved for: the first of
// the run's. A 90 % interval of 200 draws is good to a tenth of its width.
const chemistryDraws = 200

// chemistry works a pot out as a solution. celsius is its serving temperature.
func (w *walk) chemistry(pot *ledger.Pot, celsius float64) *Chemistry {
	m := &meter{}
	brix := w.brix(pot)
	c := &Chemistry{Celsius: celsius, Brix: known(m.Of(brix), "°Bx")}
	co2 := ratio(pot.Total(constituent.CarbonDioxide), w.volume(pot), perLitre)
	c.CO2 = known(m.Of(co2), "g/l")
	if why := unsolvable(pot); why != "" {
		c.withhold(why)
		return c
	}
	n := min(pot.N, chemistryDraws+1)
	in := w.ionsOf(pot, n)
	a, err := solveDraws(in, pot, w.density(pot), celsius)
	if err != nil {
		c.withhold(err.Error())
		return c
	}
	c.Unseen = in.unseen()
	if a.pH != nil {
		c.PH = Estimate{Result: known(m.Of(a.pH), "pH")}
	} else {
		c.PH.withhold(a.why)
	}
	c.PHMeter = Estimate{Result: known(m.Of(a.meter), "pH")}
	for i, end := range endPoints {
		c.Acidity = append(c.Acidity, Acidity{
			EndPoint: end, Per100g: Estimate{Result: known(m.Of(a.per100g[i]), "g/100 g")}, PerLitre: Estimate{Result: known(m.Of(a.perLitre[i]), "g/l")},
		})
	}
	c.BrixAcid = Estimate{Result: known(m.Of(ratio(brix[:n], a.per100g[0], 1)), "1")}
	switch half := (c.PHMeter.High - c.PHMeter.Low) / 2; {
	case len(in.bare) > 0:
		c.withholdPH("potassium unknown of " + listed(in.bare) + ": the pH is higher than its acids alone would make it; measure it")
	case half > spanOf("widest").high:
		c.withhold(tooWide(in.unknown))
	}
	return c
}

const perLitre = 1000

// dissolve works the serving and its house-made components out as solutions.
func (a *Assay) dissolve(w *walk) {
	celsius := MeterCelsius
	if a.Drink.At != nil {
		celsius = a.Drink.At.Number
	}
	a.Chemistry = w.chemistry(a.Serving, celsius)
	for i, c := range a.Components {
		if c.House {
			a.Components[i].Chemistry = w.chemistry(w.made[c.Name], celsius)
		}
	}
}

// withhold keeps pH and acidity from being printed: what is unknown may lie
// outside any interval that the known part has.
func (c *Chemistry) withhold(why string) {
	c.withholdPH(why)
	c.BrixAcid.withhold(why)
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
	c.PH.withhold(why)
	c.PHMeter.withhold(why)
}

func (e *Estimate) withhold(why string) {
	e.Why, e.Unknown = why, true
	e.Mean, e.SD, e.Low, e.High = math.NaN(), math.NaN(), math.NaN(), math.NaN()
}

// unsolvable tells why a pot can have no pH from its composition, if so.
func unsolvable(pot *ledger.Pot) string {
	const hundred = 100
	mass, water, protein := pot.Central(constituent.Mass), pot.Central(constituent.Water), pot.Central(constituent.Protein)
	switch limit := spanOf("protein").high; {
	case mass <= 0 || water <= 0:
		return "there is no water in it"
	case hundred*protein/mass > limit:
		return fmt.Sprintf("%.1f g of protein in 100 g buffer as its acids do: no pH from composition above %g g; titrate it", hundred*protein/mass, limit)
	}
	return ""
}

func tooWide(foods []string) string {
	const why = "what its foods do not say leaves it open: measure the pH"
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
