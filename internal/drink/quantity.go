package drink

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// scale is a kind of quantity that is not a kitchen measure: its units and the
// range in which a figure can be meant.
type scale struct {
	what      string
	units     []string // the first is the one that advice shows
	low, high float64  // in the unit written
	example   string
	limit     string // instead of low and high: the quantity of data/limits.csv, unit by unit
}

// span gives the range in which a figure in a unit can be meant.
func (s scale) span(in string) (low, high float64) {
	if s.limit == "" {
		return s.low, s.high
	}
	l := unit.LimitOf(s.limit, in)
	return l.Low, l.High
}

// What an instrument reads is held to what a drink can have (data/limits.csv). The other
// ranges only keep slips of the pen out; they say nothing about what is possible in a
// kitchen.
var (
	temperature = scale{what: "a temperature", units: []string{"°C"}, low: -40, high: 130, example: "6 °C"}
	percent     = scale{what: "a share", units: []string{"%"}, low: 0, high: 100, example: "9.5 %"}
	brixScale   = scale{what: "a reading in °Brix", units: []string{"", "°Bx"}, limit: "°Brix", example: "52.5 ± 0.2"}
	phScale     = scale{what: "a pH", units: []string{""}, limit: "pH", example: "3.1"}
	density     = scale{what: "a density", units: []string{"g/ml"}, limit: "density of a liquid", example: "1.03 g/ml"}
	foodDensity = scale{what: "a density", units: []string{"g/ml"}, limit: "density of a food", example: "1.03 g/ml"}
	gas         = scale{what: "dissolved gas", units: []string{"g/l"}, low: 0, high: 50, example: "3.0 g/l ± 0.5 g/l"}
	acidity     = scale{what: "a titratable acidity", units: []string{"g/l", "g/100 g", "g/100 ml", "%"}, limit: "titratable acidity", example: "6.2 g/l"}
	molarity    = scale{what: "the strength of the base", units: []string{"mol/l"}, low: 0.0001, high: 20, example: "0.1 mol/l"}
	duration    = scale{what: "a time", units: []string{"min", "h", "s", "day", "days"}, low: 0, high: 1e6, example: "20 min"}
	figure      = scale{what: "a figure", units: []string{"g", "mg", "µg", "kJ", "kcal"}, low: 0, high: 1e9, example: "1.5 g"}
)

// minutes in each unit of duration; a day is 24 h (SI brochure, table 8).
var minutes = map[string]float64{"s": 1.0 / 60, "min": 1, "h": 60, "day": 1440, "days": 1440}

// unitSigns turns signs that look the same into the one that units use: the
// Greek mu and the ordinal that keyboards put for a degree.
var unitSigns = strings.NewReplacer("μg", "µg", "º", "°")

// parseQuantity reads "NUMBER UNIT [± NUMBER UNIT [sd]]". The error is a
// *fail.Error without a place.
func parseQuantity(text string, s scale) (Quantity, error) {
	text = unitSigns.Replace(plainSpaces(text))
	main, spread, ranged := strings.Cut(text, "±")
	q := Quantity{}
	var err error
	if q.Number, q.Unit, q.Decimals, err = parseFigure(main, s); err != nil {
		return Quantity{}, err
	}
	low, high := s.span(q.Unit)
	if q.Number < low || q.Number > high {
		return Quantity{}, fail.New(fail.Wrong, fmt.Sprintf("%s is out of range for %s", quoted(strings.TrimSpace(text)), s.what),
			fmt.Sprintf("it lies between %s and %s%s", number(low), number(high), unitTail(q.Unit)))
	}
	if !ranged {
		return q, nil
	}
	spread = strings.TrimSpace(spread)
	if cut, found := strings.CutSuffix(spread, " sd"); found {
		spread, q.Sigma = cut, true
	}
	var tail string
	if q.Half, tail, _, err = parseFigure(spread, s); err != nil {
		return Quantity{}, err
	}
	if tail != q.Unit || q.Half < 0 || q.Half > high-low {
		return Quantity{}, fail.New(fail.Wrong, fmt.Sprintf("%s is not a range of %s", quoted(text), s.what), "write the same unit on both sides of ±, such as \""+s.example+"\"")
	}
	if low >= 0 {
		if what, do := unit.BelowZero(strings.TrimSpace(text), q.Number, q.Half, q.Sigma, q.Unit); what != "" {
			return Quantity{}, fail.New(fail.Wrong, what, do)
		}
	}
	return q, nil
}

// parseFigure reads NUMBER UNIT and nothing more.
func parseFigure(text string, s scale) (value float64, tail string, decimals int, err error) {
	text = strings.TrimSpace(text)
	digits, negative := strings.CutPrefix(strings.Replace(text, "−", "-", 1), "-")
	end := strings.IndexFunc(digits, func(c rune) bool { return !strings.ContainsRune("0123456789./,", c) })
	if end < 0 {
		end = len(digits)
	}
	if !strings.ContainsAny(digits[:end], "0123456789") {
		return 0, "", 0, fail.New(fail.Wrong, quoted(text)+" does not begin with a number", "write "+s.what+" like \""+s.example+"\"")
	}
	if value, decimals, err = unit.ParseNumber(digits[:end]); err != nil {
		return 0, "", 0, err
	}
	if negative {
		value = -value
	}
	tail = strings.TrimSpace(digits[end:])
	if !slices.Contains(s.units, tail) {
		return 0, "", 0, fail.New(fail.Wrong, wrongUnit(tail, s), unitAdvice(tail, s))
	}
	return value, tail, decimals, nil
}

func wrongUnit(tail string, s scale) string {
	if tail == "" {
		return s.what + " needs a unit"
	}
	return s.what + " is not given in " + quoted(tail)
}

func unitAdvice(tail string, s scale) string {
	switch {
	case s.units[0] != "°C":
	case tail == "K":
		return "take 273.15 off and write °C"
	case tail == "F" || tail == "°F":
		return "take 32 off, multiply by 5/9 and write °C"
	case tail == "C" || tail == "℃" || tail == "° C":
		return "write °C"
	}
	known := slices.DeleteFunc(slices.Clone(s.units), func(u string) bool { return u == "" })
	if len(known) == 0 {
		return "write the number alone, such as \"" + s.example + "\""
	}
	return "use " + alternatives(known) + ", such as \"" + s.example + "\""
}

func unitTail(u string) string {
	if u == "" {
		return ""
	}
	return " " + u
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// quantity reads a scalar of a scale and reports what is wrong with it.
func (r *values) quantity(n ast.Node, what string, s scale) *Quantity {
	text, ok := r.scalar(n, what)
	if !ok {
		return nil
	}
	q, err := parseQuantity(text, s)
	if err != nil {
		r.faults.Join(r.nodeAt(n), err)
		return nil
	}
	return &q
}

// minutesOf reads a time and gives it in minutes, whatever unit was written. A clock that
// shows seconds is read to half of the last digit of these, not of a minute.
func (r *values) minutesOf(n ast.Node, what string) *Quantity {
	q := r.quantity(n, what, duration)
	if q != nil {
		if q.Half == 0 && q.Number > 0 && minutes[q.Unit] < 1 {
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
	q, err := parseQuantity(limit, figure)
	if err != nil {
		r.faults.Join(r.nodeAt(e.value), err)
		return v, false
	}
	v.Quantity = q
	if below {
		v.State, v.Limit, v.Quantity = Below, q.Number, Quantity{Unit: q.Unit, Decimals: q.Decimals}
		if q.Half > 0 || v.Limit == 0 {
			r.faults.Add(r.nodeAt(e.value), "write it like \"< 0.5 g\"", "%s is not a limit", quoted(text))
			return v, false
		}
	}
	return v, true
}
