package foaming

import (
	"math"
	"slices"

	"sipsum/internal/acidity"
	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// Condition is one condition of a kind of foam, and how a pot stands to it.
type Condition struct {
	Kind     string // "cream"
	Of       string // a constituent, or one of PH, Alcohol, Celsius, Overrun, Share
	Unit     string
	Figure   composition.Result // Mean is NaN if nobody knows
	Why      string             // nobody knows
	Verdict  Verdict
	Ranges   []Range // none: nobody has published any
	Searched string  // where there is none
}

// Foam is a pot as it is foamed. Celsius and Overrun are columns, nil where nobody stated them;
// Overrun is a ratio.
type Foam struct {
	Pot              *ledger.Pot
	Read             acidity.Surely
	Celsius, Overrun []float64
}

// Judge sets a foam beside the conditions of every kind that it may be; none: no food in it is
// one of which anything is published.
func Judge(lab *acidity.Laboratory, f Foam) []Condition {
	m := meter{lab: lab, foam: f, mass: f.Pot.Mass()}
	var list []Condition
	kinds, rows := kindsOf(f.Pot)
	for _, k := range kinds {
		for _, r := range rules()[k.id] {
			c := Condition{Kind: k.name, Of: r.of, Unit: r.unit, Ranges: r.ranges, Searched: r.searched}
			var low, high float64
			c.Figure, low, high, c.Why = m.figure(r, rows[k.id])
			c.Verdict = verdict(low, high, r.ranges)
			list = append(list, c)
		}
	}
	return list
}

// meter reads the figures of one pot.
type meter struct {
	composition.Meter
	lab  *acidity.Laboratory
	foam Foam
	mass []float64

	ph *chemistry.Estimate
}

// figure reads what a rule is of, between which ends it lies and, if nobody knows, why.
func (m *meter) figure(r rule, rows []int) (f composition.Result, low, high float64, why string) {
	switch r.of {
	case PH:
		e := m.acidity()
		f, why = e.Result, e.Why
		low, high = e.Low, e.High
		if why != "" {
			f = unread(r.unit)
		}
		return f, low, high, why
	case Alcohol:
		f = composition.Known(m.Of(m.lab.Gauge.Abv(m.foam.Pot)), r.unit)
	case Celsius:
		f, why = m.stated(m.foam.Celsius, 1, r.unit, "nobody states how cold it is: at: … °C")
	case Overrun:
		f, why = m.stated(m.foam.Overrun, unit.Hundred, r.unit, "nobody read it")
	case Share:
		col := make([]float64, len(m.mass))
		for _, row := range rows {
			for d, g := range m.foam.Pot.Of(row, constituent.Mass) {
				col[d] += g
			}
		}
		f = composition.Known(m.Of(estimate.Ratio(col, m.mass, unit.Hundred)), r.unit)
	default:
		c := constituent.Must(constituent.ID(r.of))
		ids, pot := []*constituent.Constituent{c}, m.foam.Pot
		if c.ID == constituent.Protein { // a range is of the food's own; fat counts wherever it comes from
			pot = pot.Only(func(row int) bool { return slices.Contains(rows, row) })
		}
		f = m.Composition(pot, ids, composition.TotalsOf(pot, ids), m.mass, unit.Hundred)[0].Result
		if f.Unknown {
			return unread(r.unit), math.NaN(), math.NaN(), "no food states it"
		}
		f.Unit = r.unit
		return f, f.Low, f.UpTo, ""
	}
	return f, f.Low, f.High, why
}

// stated reads a column that somebody may have stated.
func (m *meter) stated(col []float64, factor float64, of, why string) (composition.Result, string) {
	if col == nil {
		return unread(of), why
	}
	scaled := make([]float64, len(col))
	for d, x := range col {
		scaled[d] = x * factor
	}
	return composition.Known(m.Of(scaled), of), ""
}

func unread(of string) composition.Result {
	none := math.NaN()
	return composition.Result{Summary: estimate.Summary{Mean: none, SD: none, Low: none, High: none}, Unit: of, Unknown: true}
}

// acidity works the pH out once.
func (m *meter) acidity() chemistry.Estimate {
	if m.ph == nil {
		m.ph = &chemistry.Of(m.lab, chemistry.Liquid{Pot: m.foam.Pot, Celsius: acidity.MeterCelsius, Read: m.foam.Read}).PHMeter
	}
	return *m.ph
}
