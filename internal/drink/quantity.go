package drink

import (
	"math"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// What an instrument reads is held to what a drink can have (data/limits.csv). The other
// ranges only keep slips of the pen out; they say nothing about what is possible in a
// kitchen.
var (
	temperature = unit.Scale{What: "a temperature", Units: []string{"°C"}, Low: -40, High: 130, Example: "6 °C"}
	served      = unit.Scale{What: "a serving temperature", Units: []string{"°C"}, Low: -30, High: 100, Example: "6 °C"} // our own bound: spirits out of a freezer of four stars pour at −24, and water boils at 100
	percent     = unit.Scale{What: "a share", Units: []string{"%"}, Low: 0, High: 100, Example: "9.5 %"}
	brixScale   = unit.Scale{What: "a reading in °Brix", Units: []string{"", "°Bx"}, Limit: "°Brix", Example: "52.5 ± 0.2"}
	phScale     = unit.Scale{What: "a pH", Units: []string{""}, Limit: "pH", Example: "3.1"}
	density     = unit.Scale{What: "a density", Units: []string{"g/ml"}, Limit: "density of a liquid", Example: "1.03 g/ml"}
	foodDensity = unit.Scale{What: "a density", Units: []string{"g/ml"}, Limit: "density of a food", Example: "1.03 g/ml"}
	gas         = unit.Scale{What: "dissolved gas", Units: []string{"g/l"}, Low: 0, High: 50, Example: "3.0 g/l ± 0.5 g/l"}
	acidity     = unit.Scale{What: "a titratable acidity", Units: []string{"g/l", "g/100 g", "g/100 ml", "%"}, Limit: "titratable acidity", Example: "6.2 g/l"}
	molarity    = unit.Scale{What: "the strength of the base", Units: []string{"mol/l"}, Low: 0.0001, High: 20, Example: "0.1 mol/l"}
	duration    = unit.Scale{What: "a time", Units: []string{"min", "h", "s", "day", "days"}, Low: 0, High: 1e6, Example: "20 min"}
	figure      = unit.Scale{What: "a figure", Units: []string{"g", "mg", "µg", "kJ", "kcal"}, Low: 0, High: 1e9, Example: "1.5 g"}
)

// minutes in each unit of duration; a day is 24 h (SI brochure, table 8).
var minutes = map[string]float64{"s": 1.0 / 60, "min": 1, "h": 60, "day": 1440, "days": 1440}

// quantity reads a scalar of a scale and reports what is wrong with it.
func (r *values) quantity(n ast.Node, what string, s unit.Scale) *Quantity {
	text, ok := r.scalar(n, what)
	if !ok {
		return nil
	}
	q, err := s.Parse(text)
	if err != nil {
		r.misread(r.nodeAt(n), err)
		return nil
	}
	return &q
}

// minutesOf reads a time and gives it in minutes, whatever unit was written. A clock that
// shows seconds is read to half of the last digit of these, not of a minute.
func (r *values) minutesOf(n ast.Node, what string) *Quantity {
	q := r.quantity(n, what, duration)
	if q != nil {
		if q.Half == 0 && !q.Exact && q.Number > 0 && minutes[q.Unit] < 1 {
			q.Half = math.Pow(10, -float64(q.Decimals)) / 2
		}
		q.Number, q.Half, q.Unit = q.Number*minutes[q.Unit], q.Half*minutes[q.Unit], "min"
	}
	return q
}

// stated reads a figure of an own food: a quantity, "trace", "unknown" or
// "< 0.5 g".
func (r *values) stated(e entry) (Stated, bool) {
	v := Stated{Tag: e.key, Place: e.at}
	text, ok := r.scalar(e.value, e.key)
	if !ok {
		return v, false
	}
	if text == Trace || text == Unknown {
		v.State = text
		return v, true
	}
	limit, below := strings.CutPrefix(text, "<")
	q, err := figure.Parse(limit)
	if err != nil {
		r.misread(r.nodeAt(e.value), err)
		return v, false
	}
	v.Quantity = q
	if below {
		v.State, v.Limit, v.Quantity = Below, q.Number, Quantity{Unit: q.Unit, Decimals: q.Decimals}
		if q.Half > 0 || q.Exact || v.Limit == 0 {
			r.faults.Add(r.nodeAt(e.value), "write it like \"< 0.5 g\"", "%s is not a limit", quoted(text))
			return v, false
		}
	}
	return v, true
}
