package batch

import (
	"math"

	"sipsum/internal/drink"
	"sipsum/internal/unit"
)

// Weighed is an amount of a batch.
type Weighed struct {
	Path    string
	Name    string      // what is weighed; of an amount of a step its parameter
	House   bool        // it is a component
	Food    string      // table:code; "" of a component and of an amount of a step
	Eaten   bool        // false of a garnish that stays behind
	Top     bool        // it is a garnish: nobody weighs it
	Amount  unit.Amount // without rounding; its Measure has no kind if it is counted, or dosed to a reading
	Rounded unit.Amount // as the scale shows it
	Count   float64     // of portions
	Portion string
	Grams   float64 // at central values, edible
	Dosed   bool    // as much as the reading of its step wants

	Millilitres float64  // NaN if nobody states a density
	Step        Step     // how finely it has to be weighed
	Times       float64  // how often what the file writes is weighed in all
	Home        *Spooned // as it is measured without a scale; nil: on a bench
	file        float64  // by what it is multiplied to be what the file writes
	pulled      bool     // a machine weighs it, glass by glass
}

// weighed is a line of the file k times, and that again and again.
func (m *maker) weighed(line drink.Line, k, more float64) Weighed {
	in := m.Recipe.Lines[line.Path]
	w := Weighed{Path: line.Path, Eaten: line.Eaten, Grams: m.grams(line) * k, Millilitres: math.NaN(), Times: k * more, file: 1 / k}
	if in.Component != nil {
		w.Name, w.House = in.Component.Name, true
		if y := m.yields[w.Name]; y.Filled > 0 {
			w.Millilitres = w.Grams * y.Filled / y.Out
		}
	} else {
		f := in.Profile.Food
		w.Name, w.Food = m.Recipe.Called[m.Recipe.PartOf(line)], f.ID.String()
		if f.Density.GramsPerMl > 0 {
			w.Millilitres = w.Grams / f.Density.GramsPerMl
		}
	}
	switch _, dosed := m.doses()[line.Path]; {
	case dosed:
		w.Dosed = true
	case line.Portion != "":
		w.Count, w.Portion = line.Count*k, in.Line.Portion
	case line.Amount.Measure.Kind == unit.Share:
		w.Amount = line.Amount
		w.Rounded = m.round(unit.Amount{Number: w.Grams, Measure: gram(), Decimals: 1})
	default:
		w.Amount = times(line.Amount, k)
		w.Rounded = m.round(w.Amount)
	}
	return w
}

// grams is what a line weighs in as the file writes it, its edible part. A garnish that stays behind
// is in no pot.
func (m *maker) grams(line drink.Line) float64 {
	if g, ok := m.poured[line.Path]; ok {
		return g
	}
	in := m.Recipe.Lines[line.Path]
	switch {
	case in.Component != nil && line.Amount.Measure.Kind == unit.Mass:
		return line.Amount.Base()
	case in.Component != nil:
		return math.NaN()
	case line.Portion != "":
		return line.Count * in.Grams
	}
	return line.Amount.Base() * in.Grams
}

// times multiplies an amount, with its ±.
func times(a unit.Amount, k float64) unit.Amount {
	a.Number, a.Half = a.Number*k, a.Half*k
	return a
}

// step is what the bar's scale shows of an amount, of more than it holds a larger one; of what no scale
// weighs the last digit written.
func (b Bench) step(a unit.Amount) float64 {
	step := a.Resolution()
	if b.scaled(a) {
		step = b.Recipe.Drink.Scale.Base()
	}
	for a.Measure.Kind == unit.Mass && a.Base() > step*limits().divisions {
		step *= ten
	}
	return step
}

// scaled reports whether the file says what scale weighs an amount.
func (b Bench) scaled(a unit.Amount) bool {
	return b.Recipe.Drink.Scale != nil && a.Measure.Kind == unit.Mass
}

// round is an amount as it is written on the card: by the steps of the scale, but never so coarse that
// the rounding alone takes more of it than any amount may be off.
func (m *maker) round(a unit.Amount) unit.Amount {
	return byStep(a, fine(a, m.step(a)))
}

// fine makes a step as fine as an amount wants it, tenth by tenth.
func fine(a unit.Amount, step float64) float64 {
	most := max(limits().share, a.Measure.Spread) * a.Base()
	for most > 0 && math.Abs(byStep(a, step).Base()-a.Base()) > most {
		step /= ten
	}
	return step
}

// byStep is an amount by steps, which are in g, ml or parts.
func byStep(a unit.Amount, step float64) unit.Amount {
	step /= a.Measure.Factor
	a.Decimals = decimals(step)
	whole := math.Pow(ten, float64(a.Decimals))
	a.Number = math.Round(math.Round(a.Number/step)*step*whole) / whole
	a.Half = 0
	return a
}

const ten = 10

// decimals is how many a step has.
func decimals(step float64) int {
	const most = 6 // finer than any scale
	n := 0
	for x := step; n < most && math.Abs(x-math.Round(x)) > unit.Closeness; n++ {
		x *= ten
	}
	return n
}

// gram is the measure of a scale.
func gram() unit.Measure {
	g, _ := unit.FindMeasure("g")
	return g
}
