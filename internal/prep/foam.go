package prep

import (
	"math"

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
	Aired   bool      // it holds more gas than the charge fills at the pressure of the air
	Rest    *Rest     // nil if the siphon or how cold it is was not stated, or it is frozen
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
// for no figure of the pot; only carbon dioxide stays in the liquid.
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
		if out, err = a.charged(f, a.siphon(s, f), a.figure(s.Left, perMl, "left")); err != nil {
			return Outcome{}, err
		}
	}
	if f.Overrun == nil {
		out.note("nobody read its overrun, so it counts as the liquid that it is: weigh a cup of the liquid and the same cup of foam, overrun = liquid ÷ foam − 1")
	}
	if f.Gas != "" && f.Overrun != nil {
		holds, brings := f.Overrun[0]*f.Liquid[0], f.gas()
		if f.Aired = holds > brings; f.Aired {
			out.note("the foam holds %.0f ml of gas, and the charge gives at most %.0f ml at the pressure of the air: the rest is air, or the overrun is misread", holds, math.Ceil(brings))
		}
	}
	out.Foamed = f
	return out, nil
}

// gas is how many millilitres the charge fills at the pressure of the air, as an ideal gas; as warm as
// gases of drinks were measured where nobody stated how cold it is, which is the most.
func (f *Foamed) gas() float64 {
	const litre = 1.0 // a vessel of one litre that holds it all is at so many atmospheres as it fills litres
	celsius := unit.LimitOf("solubility of a gas", "°C").High
	if f.Celsius != nil {
		celsius = f.Celsius[0]
	}
	return f.Gas.Pressure(f.Charge[0]/f.Gas.Molar(), 0, litre, celsius) * unit.Kilo
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

// siphon is the closed vessel with its charge.
func (a frother) siphon(s *drink.Foam, f *Foamed) *Charge {
	_, unknown := a.pot.Bound(constituent.CarbonDioxide)
	return &Charge{Gas: f.Gas, Bottle: a.brimful(s.Bottle), Grams: f.Charge, Celsius: f.Celsius, Unmeasured: len(unknown) > 0}
}

// charged gives the siphon at rest, and leaves carbon dioxide in the liquid.
func (a frother) charged(f *Foamed, c *Charge, left []float64) (Outcome, error) {
	var out Outcome
	held := make([]float64, a.pot.N)
	if f.Gas == solution.CarbonDioxide {
		held = a.pot.Total(constituent.CarbonDioxide)
	}
	if _, err := c.atRest(f.Liquid, held); err != nil {
		return Outcome{}, err
	}
	if why := frozen(a.pot, f.Celsius[0]); why != "" {
		// guard: no ice takes up gas
		if f.Gas == solution.CarbonDioxide {
			return Outcome{}, impossible("%s: how much carbon dioxide it takes up nobody can say", why)
		}
		out.note("%s: no pressure is told, nor how much gas is dissolved", why)
		return out, nil
	}
	f.Rest = c.rests(a.wetted(f.Liquid), f.Liquid, held)
	if high, bar := unit.LimitOf("pressure of a siphon", "bar").High, f.Rest.Bar[0]; bar > high {
		out.note("about %.2g bar at rest, more than the %s bar that soda siphons were charged to at most: take it colder, less gas or a larger siphon. What its maker allows comes first", bar, plain(high))
	}
	if measured := unit.LimitOf("solubility of a gas", "°C"); f.Celsius[0] < measured.Low || f.Celsius[0] > measured.High {
		out.note("%s °C lie outside of where the solubility of gases was measured (%s to %s °C): it is carried on along its curve, and steam is not counted", plain(f.Celsius[0]), plain(measured.Low), plain(measured.High))
	}
	if f.Gas != solution.CarbonDioxide {
		return out, nil
	}
	grams, told, err := a.stays(c, left, f.Liquid, held)
	if err != nil {
		return Outcome{}, err
	}
	gas, perGram := a.Drawn(Gas())
	aerated := Aerate(a.pot, gas, perGram, grams, a.Path)
	aerated.Notes = append(out.Notes, told.Notes...)
	return aerated, nil
}

// stays gives the grams of carbon dioxide that a poured foam holds. Each of its bubbles lets gas go, so
// that where nobody stated it the figure is what liquid holds open at 1 atm of the gas, and no more: its draws
// reach from none, rectangular on each side, to what the closed siphon dissolves.
func (a frother) stays(c *Charge, left, volume, held []float64) ([]float64, Outcome, error) {
	if left != nil {
		grams, told, err := Carbonate(c, left, volume, held, a.Factors)
		if err == nil {
			told.Notes = told.Notes[1:] // the pressure is told of the siphon
		}
		return grams, told, err
	}
	closed, open := c.equilibria(volume, held)
	at := a.draw("between flat, open and closed", factor{0, -1, 1})
	grams := make([]float64, len(volume))
	for d := range grams {
		grams[d] = min(open[d], closed[d])
		if at[d] < 0 {
			grams[d] *= 1 + at[d]
		} else {
			grams[d] += at[d] * (closed[d] - grams[d])
		}
	}
	var told Outcome
	told.note("what stays in the glass is not stated: taken as the %.2g g/l of a liquid open at 1 atm, and drawn from none to the %.2g g/l of the closed siphon; if it was measured, write left: … g/l in foam",
		perLitre(grams[0], volume[0]), perLitre(closed[0], volume[0]))
	return grams, told, nil
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
