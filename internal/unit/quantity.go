package unit

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/fail"
)

// Quantity is a number in a unit that is not a kitchen measure.
type Quantity struct {
	Number   float64
	Half     float64 // half-width of the range in Unit, or the sd; 0 if none was stated
	Sigma    bool    // Half is one standard deviation
	Unit     string  // "°C", "g/ml", "kJ", "%", "min", …; "" for pH and °Brix
	Decimals int     // decimals written
}

// Scale is a kind of quantity that is not a kitchen measure: its units and the
// range in which a figure can be meant.
type Scale struct {
	What      string
	Units     []string // the first is the one that advice shows
	Low, High float64  // in the unit written
	Example   string
	Limit     string // instead of Low and High: the quantity of data/limits.csv, unit by unit
}

// Span gives the range in which a figure in a unit can be meant.
func (s Scale) Span(in string) (low, high float64) {
	if s.Limit == "" {
		return s.Low, s.High
	}
	l := LimitOf(s.Limit, in)
	return l.Low, l.High
}

// unitSigns turns signs that look the same into the one that units use: the
// Greek mu and the ordinal that keyboards put for a degree.
var unitSigns = strings.NewReplacer("μg", "µg", "º", "°")

// Parse reads "NUMBER UNIT [± NUMBER UNIT [sd]]". The error is a
// *fail.Error without a place.
func (s Scale) Parse(text string) (Quantity, error) {
	text = unitSigns.Replace(PlainSpaces(text))
	main, spread, ranged := strings.Cut(text, "±")
	q := Quantity{}
	var err error
	if q.Number, q.Unit, q.Decimals, err = s.figure(main); err != nil {
		return Quantity{}, err
	}
	low, high := s.Span(q.Unit)
	if q.Number < low || q.Number > high {
		return Quantity{}, wrong(fmt.Sprintf("%s is out of range for %s", quoted(strings.TrimSpace(text)), s.What),
			strings.TrimSpace("it lies between "+number(low)+" and "+number(high)+" "+q.Unit))
	}
	if !ranged {
		return q, nil
	}
	spread = strings.TrimSpace(spread)
	if cut, found := strings.CutSuffix(spread, " sd"); found {
		spread, q.Sigma = cut, true
	}
	var tail string
	if q.Half, tail, _, err = s.figure(spread); err != nil {
		return Quantity{}, err
	}
	if tail != q.Unit || q.Half < 0 || q.Half > high-low {
		return Quantity{}, wrong(fmt.Sprintf("%s is not a range of %s", quoted(text), s.What), "write the same unit on both sides of ±, such as \""+s.Example+"\"")
	}
	if low >= 0 {
		if what, do := BelowZero(strings.TrimSpace(text), q.Number, q.Half, q.Sigma, q.Unit); what != "" {
			return Quantity{}, wrong(what, do)
		}
	}
	return q, nil
}

// figure reads NUMBER UNIT and nothing more.
func (s Scale) figure(text string) (value float64, tail string, decimals int, err error) {
	text = strings.TrimSpace(text)
	digits, negative := strings.CutPrefix(strings.Replace(text, "−", "-", 1), "-")
	end := strings.IndexFunc(digits, func(c rune) bool { return !strings.ContainsRune("0123456789./,", c) })
	if end < 0 {
		end = len(digits)
	}
	if !strings.ContainsAny(digits[:end], "0123456789") {
		return 0, "", 0, wrong(quoted(text)+" does not begin with a number", "write "+s.What+" like \""+s.Example+"\"")
	}
	if value, decimals, err = ParseNumber(digits[:end]); err != nil {
		return 0, "", 0, err
	}
	if negative {
		value = -value
	}
	tail = strings.TrimSpace(digits[end:])
	if !slices.Contains(s.Units, tail) {
		return 0, "", 0, wrong(s.wrongUnit(tail), s.advise(tail))
	}
	return value, tail, decimals, nil
}

func (s Scale) wrongUnit(tail string) string {
	if tail == "" {
		return s.What + " needs a unit"
	}
	return s.What + " is not given in " + quoted(tail)
}

func (s Scale) advise(tail string) string {
	switch {
	case s.Units[0] != "°C":
	case tail == "K":
		return "take 273.15 off and write °C"
	case tail == "F" || tail == "°F":
		return "take 32 off, multiply by 5/9 and write °C"
	case tail == "C" || tail == "℃" || tail == "° C":
		return "write °C"
	}
	known := slices.DeleteFunc(slices.Clone(s.Units), func(u string) bool { return u == "" })
	if len(known) == 0 {
		return "write the number alone, such as \"" + s.Example + "\""
	}
	return "use " + fail.Or(known) + ", such as \"" + s.Example + "\""
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// quoted shows a text of the file, not all of a long one; what does not print is escaped.
func quoted(text string) string {
	const most = 60
	if r := []rune(text); len(r) > most {
		text = string(r[:most]) + "…"
	}
	return strconv.Quote(text)
}

// PlainSpaces turns the no-break and thin spaces that word processors put
// between a number and its unit into plain ones.
func PlainSpaces(text string) string {
	return strings.Map(func(c rune) rune {
		switch c {
		case '\u00a0', '\u2009', '\u202f':
			return ' '
		}
		return c
	}, text)
}
