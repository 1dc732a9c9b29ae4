package prep

import (
	"sipsum/internal/amount"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/liquid"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
)

// Foamed is what is known of the bubbles in a pot, in columns; nil is what nobody stated.
type Foamed struct {
	Path    string
	Gas     solution.Gas // "": air
	Charge  []float64    // g
	Celsius []float64
	Overrun []float64 // ml of gas to a ml of liquid, as read
	Liquid  []float64 // ml
	Rest    *Rest     // nil if the siphon or how cold it is was not stated
}

// Rest is a closed siphon at rest: what it was charged with is dissolved, or above the liquid.
type Rest struct {
	Bar       []float64 // above that of the air
	Dissolved []float64 // g
	Head      []float64 // g
}

// frother is where a foam is made.
type frother struct{ at }

// foam reads what is known of the charge and of the foam. Bubbles weigh next to nothing and count
// for no figure of the pot; only carbon dioxide stays in the liquid, as in carbonate.
func (a frother) foam(s *drink.Foam) (Outcome, error) {
	var out Outcome
	f := &Foamed{
		Path: a.Path, Gas: solution.Gas(s.Gas), Charge: a.amount(s.Charge, "charge"), Celsius: a.figure(s.Temperature, 1, "at"),
		Overrun: a.overrun(s.Overrun), Liquid: a.Volume(a.pot),
	}
	// guard: there is liquid in a foam
	if liquid.TooDry(a.pot) != "" || f.Liquid[0] <= 0 {
		return Outcome{}, impossible("there is no liquid to foam")
	}
	switch {
	case s.Gas == "":
	case s.Bottle == nil || s.Temperature == nil:
		out.note("no pressure is told: write the siphon's whole volume, up to the brim, and how cold it is, bottle: 0.7 l, at: 4 °C")
	default:
		var err error
		if out, err = a.charged(f, &Charge{Gas: f.Gas, Bottle: a.brimful(s.Bottle), Grams: f.Charge, Celsius: f.Celsius}); err != nil {
			return Outcome{}, err
		}
	}
	if f.Overrun == nil {
		out.note("nobody read its overrun, so it counts as the liquid that it is: weigh a cup of the liquid and the same cup of foam, overrun = liquid ÷ foam − 1")
	}
	if f.Gas != "" && f.Celsius != nil && f.Overrun != nil {
		holds, brings := f.Overrun[0]*f.Liquid[0], f.gas()
		if holds > brings {
			out.note("the foam holds %.0f ml of gas, and the charge gives at most %.2g ml at the pressure of the air: the rest is air, or the overrun is misread", holds, brings)
		}
	}
	out.Foamed = f
	return out, nil
}

// gas is how many millilitres the charge fills at the pressure of the air, as an ideal gas.
func (f *Foamed) gas() float64 {
	const litre = 1.0 // a vessel of one litre that holds it all is at so many atmospheres as it fills litres
	return f.Gas.Pressure(f.Charge[0]/f.Gas.Molar(), 0, litre, f.Celsius[0]) * unit.Kilo
}

// brimful gives the column of a siphon's volume. Without ± it is known as well as a vessel is, not to
// half of the last digit of its litres.
func (a frother) brimful(of *unit.Amount) []float64 {
	col := a.amount(of, "bottle")
	if of.Half > 0 || of.Exact {
		return col
	}
	half := amount.MustInstrument(amount.ReadBottle).HalfAt(1)
	off := a.draw("volume of the siphon", factor{0, -half, half})
	for d := 1; d < len(col); d++ {
		col[d] = col[0] * (1 + off[d])
	}
	return col
}

// overrun gives the column of an overrun as a ratio. It is no share of a whole: it may be more than 100 %.
func (a frother) overrun(q *drink.Quantity) []float64 {
	if q == nil {
		return nil
	}
	const digits = 2 // of a hundred
	ratio := *q
	if q.Half == 0 && !q.Exact && q.Number > 0 { // no cup is filled as finely as a figure is written
		ratio.Half = amount.MustInstrument(amount.ReadOverrun).HalfAt(q.Number)
	}
	ratio.Number, ratio.Half, ratio.Decimals, ratio.Unit = q.Number/unit.Hundred, ratio.Half/unit.Hundred, q.Decimals+digits, ""
	return a.figure(&ratio, 1, "overrun")
}

// charged gives the siphon at rest, and leaves carbon dioxide in the liquid.
func (a frother) charged(f *Foamed, c *Charge) (Outcome, error) {
	var out Outcome
	held := make([]float64, a.pot.N)
	if f.Gas == solution.CarbonDioxide {
		held = a.pot.Total(constituent.CarbonDioxide)
	}
	if _, err := c.atRest(f.Liquid, held); err != nil {
		return Outcome{}, err
	}
	f.Rest = c.rests(a.wetted(f.Liquid), f.Liquid, held)
	if high, bar := unit.LimitOf("pressure of a siphon", "bar").High, f.Rest.Bar[0]; bar > high {
		out.note("about %.2g bar at rest, more than the %s bar that soda siphons were charged to at most: take it colder, less gas or a larger siphon. What its maker allows comes first", bar, plain(high))
	}
	if measured := unit.LimitOf("solubility of a gas", "°C"); f.Celsius[0] < measured.Low || f.Celsius[0] > measured.High {
		out.note("%s °C lie outside of where the solubility of gases was measured (%s to %s °C): it is carried on along its curve, and ice or steam are not counted", plain(f.Celsius[0]), plain(measured.Low), plain(measured.High))
	}
	if f.Gas != solution.CarbonDioxide {
		return out, nil
	}
	grams, told, err := Carbonate(c, nil, f.Liquid, held, a.Factors)
	if err != nil {
		return Outcome{}, err
	}
	gas, perGram := a.Drawn(Gas())
	aerated := Aerate(a.pot, gas, perGram, grams, a.Path)
	aerated.Notes = append(out.Notes, told.Notes[len(told.Notes)-1]) // the pressure before it is told of the siphon
	return aerated, nil
}

// wetted is how much of the pot dissolves gas as water does, in ml: all of it, or no more than its
// water, and anything between. Cold fat and sugar take up less than water.
func (a frother) wetted(volume []float64) []float64 {
	const half = 0.5
	share, water := a.draw("what of the liquid dissolves gas", factor{half, 0, 1}), a.pot.Total(constituent.Water)
	wet := make([]float64, len(volume))
	for d, ml := range volume {
		least := min(water[d], ml) // a gram of water is a millilitre
		wet[d] = least + share[d]*(ml-least)
	}
	return wet
}

// rests gives the vessel at rest, with so many ml of liquid of which wet dissolve gas.
func (c *Charge) rests(wet, volume, held []float64) *Rest {
	n, molar := len(volume), c.Gas.Molar()
	r := &Rest{make([]float64, n), make([]float64, n), make([]float64, n)}
	for d := range volume {
		all, litres := c.Grams[d]+held[d], wet[d]/unit.Kilo
		atm := c.Gas.Pressure(all/molar, litres, max(c.Bottle[d]-volume[d], 0)/unit.Kilo, c.Celsius[d])
		// guard: no siphon is so small in a draw
		atm = min(atm, unit.LimitOf("pressure of a bottle", "bar").High/solution.Bar(1))
		r.Bar[d] = solution.Bar(atm)
		r.Dissolved[d] = min(c.Gas.Solubility(c.Celsius[d])*atm*litres*molar, all)
		r.Head[d] = all - r.Dissolved[d]
	}
	return r
}
