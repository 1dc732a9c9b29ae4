package drink

import (
	"fmt"
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
}

// The ranges only keep slips of the pen out; they say nothing about what is
// possible in a kitchen.
var (
	temperature = scale{"a temperature", []string{"°C"}, -40, 130, "6 °C"}
	percent     = scale{"a share", []string{"%"}, 0, 100, "9.5 %"}
	brixScale   = scale{"a reading in °Brix", []string{"", "°Bx"}, 0, 100, "52.5 ± 0.2"}
	phScale     = scale{"a pH", []string{""}, 0, 14, "3.1"}
	density     = scale{"a density", []string{"g/ml"}, 0.1, 3, "1.03 g/ml"}
	gas         = scale{"dissolved gas", []string{"g/l"}, 0, 50, "3.0 g/l ± 0.5 g/l"}
	acidity     = scale{"a titratable acidity", []string{"g/l", "g/100 g", "g/100 ml", "%"}, 0, 1000, "6.2 g/l"}
	molarity    = scale{"the strength of the base", []string{"mol/l"}, 0.0001, 20, "0.1 mol/l"}
	duration    = scale{"a time", []string{"min", "h", "s", "day", "days"}, 0, 1e6, "20 min"}
	figure      = scale{"a figure", []string{"g", "mg", "µg", "kJ", "kcal"}, 0, 1e9, "1.5 g"}
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
	if q.Number < s.low || q.Number > s.high {
		return Quantity{}, fail.New(fail.Wrong, fmt.Sprintf("%s is out of range for %s", quoted(strings.TrimSpace(text)), s.what),
			fmt.Sprintf("it lies between %s and %s%s", number(s.low), number(s.high), unitTail(q.Unit)))
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
	if tail != q.Unit || q.Half < 0 || q.Half > s.high-s.low {
		return Quantity{}, fail.New(fail.Wrong, fmt.Sprintf("%s is not a range of %s", quoted(text), s.what), "write the same unit on both sides of ±, such as \""+s.example+"\"")
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
	var known []string
	for _, u := range s.units {
		if u != "" {
			known = append(known, u)
		}
	}
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
func (r *reader) quantity(n ast.Node, what string, s scale) *Quantity {
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

// minutesOf reads a time and gives it in minutes, whatever unit was written.
func (r *reader) minutesOf(n ast.Node, what string) *Quantity {
	q := r.quantity(n, what, duration)
	if q != nil {
		q.Number, q.Half, q.Unit = q.Number*minutes[q.Unit], q.Half*minutes[q.Unit], "min"
	}
	return q
}

// stated reads a figure of an own food: a quantity, "trace", "unknown" or
// "< 0.5 g".
func (r *reader) stated(e entry) (Stated, bool) {
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
