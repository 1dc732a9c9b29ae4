package minutes

import (
	"math"
	"slices"

	"sipsum/internal/acidity"
	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/estimate"
	"sipsum/internal/liquid"
)

// told are the minutes after the pour of which a course tells: our own choice, from the first sip to the end
// of what the rates were read over.
var told = []float64{0, 1, 3, 5, 10}

// Of follows a glass over ten minutes.
func Of(g Glass) *Course {
	c := &Course{Clock: clockOf(g.Drink), Why: liquid.TooDry(g.Pot)}
	if c.Why != "" {
		return c
	}
	c.Times = timesOf(c.Clock)
	ens := g.Lab.Ens
	ens.Journal = nil // whoever asks what a figure hangs on has been answered
	b := &bench{ens: ens}
	heat, gas := g.warm(b, c.Times), g.escape(b)
	liquids := g.liquids(c.Times, heat, gas)
	c.addTemperature(heat)
	if g.Chemistry.CO2.Unknown || gas != nil {
		c.add(Gas, liquids, func(l *chemistry.Chemistry) chemistry.Estimate { return unhidden(l.CO2) })
		if g.Chemistry.CO2.Unknown {
			c.Axis(Gas).Write = "finish: - carbonate: {left: 3.0 g/l ± 0.5 g/l}"
		}
	}
	if g.Chemistry.TooDry == "" {
		c.add(Brix, liquids, func(l *chemistry.Chemistry) chemistry.Estimate { return chemistry.Estimate{Result: l.Brix} })
	}
	if len(g.Chemistry.Acidity) > 0 {
		c.add(Acidity, liquids, func(l *chemistry.Chemistry) chemistry.Estimate { return l.Acidity[0].Per100g })
	}
	c.add(PH, liquids, func(l *chemistry.Chemistry) chemistry.Estimate { return l.PHMeter })
	c.addMelted(heat)
	c.Unpaid = heat.unpaid
	if heat.unmelted != "" {
		c.withhold(heat)
	}
	c.Rates = b.used
	return c
}

// timesOf are those told, and when the last glass is ready after the first was poured.
func timesOf(c *Clock) []float64 {
	times := slices.Clone(told)
	if c == nil || c.Waited() <= 0 || c.Stood >= times[len(times)-1] || slices.Contains(times, c.Stood) {
		return times
	}
	times = append(times, c.Stood)
	slices.Sort(times)
	return times
}

// liquids are the glass as a solution at each time; nil where nobody can tell what has melted.
func (g Glass) liquids(times []float64, heat warmth, gas *escape) []*chemistry.Chemistry {
	list := make([]*chemistry.Chemistry, len(times))
	for i, t := range times {
		switch {
		case t == 0 || gas == nil && heat.melted == nil:
			list[i] = g.Chemistry
			continue
		}
		pot := g.Pot.Copy()
		if gas != nil {
			flatten(pot, gas.left(t))
		}
		if heat.melted != nil {
			g.Water(pot, heat.melted[i])
		}
		list[i] = chemistry.Of(g.Lab, chemistry.Liquid{Pot: pot, Celsius: acidity.MeterCelsius})
		if heat.melted == nil { // gas is no part of what a refractometer or a burette reads
			list[i].Brix, list[i].Acidity = g.Chemistry.Brix, g.Chemistry.Acidity
		}
	}
	return list
}

// add adds an axis that is read off the liquids.
func (c *Course) add(key string, liquids []*chemistry.Chemistry, read func(*chemistry.Chemistry) chemistry.Estimate) {
	a := Axis{Key: key}
	for i, l := range liquids {
		e := chemistry.Estimate{Why: "there is no acid to titrate"}
		if key != Acidity || len(l.Acidity) > 0 {
			e = read(l)
		}
		a.Points = append(a.Points, e)
		a.Moves = a.Moves || i > 0 && (e.Why != a.Points[0].Why || e.Why == "" && e.Summary != a.Points[0].Summary)
	}
	c.Axes = append(c.Axes, a)
}

// unhidden gives the gas of a liquid, withheld where nobody has stated it.
func unhidden(r composition.Result) chemistry.Estimate {
	if r.Unknown {
		return chemistry.Estimate{Result: r, Why: "nobody has stated its gas"}
	}
	return chemistry.Estimate{Result: r}
}

func (c *Course) addTemperature(heat warmth) {
	a := Axis{Key: Temperature, Write: heat.write}
	for i := range c.Times {
		e := chemistry.Estimate{Why: heat.why}
		if heat.why == "" {
			e.Result = composition.Known(estimate.Summarise(heat.celsius[i]), "°C")
			a.Moves = a.Moves || e.Summary != composition.Known(estimate.Summarise(heat.celsius[0]), "°C").Summary
		}
		a.Points = append(a.Points, e)
	}
	c.Axes = append(c.Axes, a)
}

func (c *Course) addMelted(heat warmth) {
	if heat.melted == nil && heat.unmelted == "" {
		return
	}
	a := Axis{Key: Melted, Moves: true}
	for i := range c.Times {
		e := chemistry.Estimate{Why: heat.unmelted}
		if e.Why == "" {
			e.Result = composition.Known(estimate.Summarise(heat.melted[i]), "g")
		}
		a.Points = append(a.Points, e)
	}
	c.Axes = append(c.Axes, a)
}

// withhold keeps back what hangs on ice of which nobody can tell how much has melted.
func (c *Course) withhold(heat warmth) {
	none := composition.Result{Summary: estimate.Summary{Mean: math.NaN(), SD: math.NaN(), Low: math.NaN(), High: math.NaN()}, Unknown: true}
	for i := range c.Axes {
		a := &c.Axes[i]
		if a.Key == Temperature {
			continue
		}
		for k := range a.Points {
			if c.Times[k] > 0 || a.Key == Melted {
				a.Points[k] = chemistry.Estimate{Result: none, Why: "how fast its ice melts hangs on how warm it is, and " + heat.unmelted}
			}
		}
		a.Write = "stands: {melts: 1.5 g/min}"
		if heat.write != "" {
			a.Write = heat.write + ", or " + a.Write
		}
	}
}
