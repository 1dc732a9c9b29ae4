package prep

import (
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
)

// Chilling is what an energy balance of ice asks, in columns.
type Chilling struct {
	From, To []float64 // °C
	Ice      []float64 // °C; nil: 0 °C
	Besides  []float64 // heat that is not the drink's, as a share of it; nil: none
}

// Melted gives the column of ice that melts until a pot has cooled and rests with it:
//
//	ice = (1 + besides) · Σ m_i·c_i · (from − to) / (L + c_water·to + c_ice·(0 − T_ice))
//
// with the heat capacities of what the pot is made of (data/heat_capacities.csv, after Choi
// and Okos 1986) and the heat of fusion L of 333.4 J/g (data/solution_constants.csv). Valid
// from 100 °C down to where the drink itself would freeze, which is refused: the water that
// melts counts, and all that is dissolved is taken as glucose if it has no formula.
//
// It is true of a shake, which comes to rest in 12 to 15 s; stirring takes minutes
// (bench trials of Arnold 2009 and 2010), so what a stirred drink melts has to be weighed.
//
// Limits: heat capacities are added up, while alcohol and water hold more together than
// apart (wide range of ALC); the heat of mixing of spirit and water is left out; heat of the
// vessel and the air, and water on wet ice, are a wide share of the rest.
func Melted(pot *ledger.Pot, c Chilling, f Factors) ([]float64, error) {
	// guard: ice does not warm
	if c.From[0] <= c.To[0] {
		return nil, impossible("chill from %.4g °C to %.4g °C: ice only cools", c.From[0], c.To[0])
	}
	h := heats{f, map[string][]float64{}}
	holds, water, ice := h.of(pot), h.each(string(constituent.Water)), h.each("ice")
	grams, fusion := make([]float64, pot.N), solution.HeatOfFusion()/molarMass(constituent.Water)
	for d := range grams {
		takes := fusion + water[d]*c.To[d]
		if c.Ice != nil {
			takes -= ice[d] * min(c.Ice[d], 0)
		}
		gives := holds[d] * max(c.From[d]-c.To[d], 0)
		if c.Besides != nil {
			gives *= 1 + c.Besides[d]
		}
		grams[d] = gives / takes
	}
	// guard: not colder than it freezes
	if at, ok := freezesAt(pot, grams[0]); ok && c.To[0] < at-unit.Closeness {
		return nil, impossible("chill to %.4g °C: with the ice that melts it would freeze from about %.2g °C on", c.To[0], at)
	}
	return grams, nil
}

// chill pours the ice that melted: what was weighed, or what the heat melts.
func (a at) chill(s *drink.Chill) (Outcome, error) {
	if s.Melt != nil {
		return a.water(a.amount(s.Melt, "melt")), nil
	}
	grams, err := Melted(a.pot, Chilling{
		From: a.figure(s.From, 1, "from"), To: a.figure(s.To, 1, "to"), Ice: a.figure(s.Ice, 1, "ice"),
		Besides: a.draw("heat besides", kinetics()["heat besides"]),
	}, a.Factors)
	if err != nil {
		return Outcome{}, err
	}
	held := estimate.Summarise(grams)
	out := a.water(grams)
	out.note("about %.3g g of ice melt (%.2g to %.2g g), by the heat of the drink, and of vessel and wet ice: right for a shake that came to rest; what stirring melts has to be weighed: chill: {melt: …}", grams[0], held.Low, held.High)
	return out, nil
}

// cool changes nothing of what is in the pot.
func (a at) cool(s *drink.Cool) (Outcome, error) {
	var out Outcome
	out.note("cooled to %.4g °C without ice: nothing of the composition is changed for it", s.To.Number)
	return out, nil
}

// heatCapacities is data/heat_capacities.csv by constituent, in J/(g K), with that of ice
// and, under "*", of what has no row.
var heatCapacities = sync.OnceValue(func() map[string]factor {
	table := map[string]factor{}
	for _, row := range embedded.Rows("heat_capacities.csv") {
		table[row.Text("constituent")] = factorOf(row, "value")
	}
	return table
})

// heats draws each heat capacity once.
type heats struct {
	factors Factors
	drawn   map[string][]float64
}

// each gives the heat capacity of a constituent, of ice, or of what has no row, in J/(g K).
func (h heats) each(key string) []float64 {
	if _, ok := heatCapacities()[key]; !ok {
		key = "*"
	}
	col, ok := h.drawn[key]
	if !ok {
		name := key
		if c, ok := constituent.Find(key); ok {
			name = c.Name
		} else if key == "*" {
			name = "the rest"
		}
		col = h.factors.draw("heat capacity of "+name, heatCapacities()[key])
		h.drawn[key] = col
	}
	return col
}

// of gives the heat that a pot holds a kelvin, in J/K.
func (h heats) of(pot *ledger.Pot) []float64 {
	sum := make([]float64, pot.N)
	for _, col := range pot.Columns.Below(constituent.Mass) {
		c := pot.Columns.List[col]
		key, _ := nearest(c, func(id constituent.ID) (string, bool) {
			_, ok := heatCapacities()[string(id)]
			return string(id), ok
		})
		each := h.each(key)
		for d, grams := range pot.Total(c.ID) {
			sum[d] += grams * each[d]
		}
	}
	return sum
}

// Holds gives the heat that a pot holds a kelvin, in J/K, and a gram of water, in J/(g K).
func Holds(pot *ledger.Pot, f Factors) (all, water []float64) {
	h := heats{f, map[string][]float64{}}
	return h.of(pot), h.each(string(constituent.Water))
}

// freezesAt gives about where a pot begins to freeze once so much more water is in it, by
// the mole fraction of the water.
func freezesAt(pot *ledger.Pot, melted float64) (celsius float64, ok bool) {
	water, others := melted/molarMass(constituent.Water), 0.0
	for _, col := range pot.Columns.Below(constituent.Mass) {
		c, grams := pot.Columns.List[col], 0.0
		if grams = pot.Central(c.ID); c.ID == constituent.Water {
			water += grams / c.Molar
			continue
		}
		molar := c.Molar
		if molar == 0 {
			molar = molarMass(constituent.Glucose)
		}
		others += grams / molar
	}
	return solution.FreezingPoint(water / (water + others))
}
