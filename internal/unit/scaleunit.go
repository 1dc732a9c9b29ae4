package unit

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/fail"
)

// The scale of Fahrenheit beside that of Celsius: exact (NIST SP 811, B.8).
const (
	fahrenheit     = "°F"
	freezingInF    = 32
	celsiusInOneOf = 5.0 / 9
)

// conversion is the unit of a scale that was written, and how a figure comes to it.
type conversion struct {
	unit   string
	offset float64 // taken off first
	factor float64
}

// value brings a figure to the unit. What no whole number of them makes is rounded to a digit more
// than was written: 40 °F are read as 4.4 °C, and known to 0.3 °C.
func (c conversion) value(x float64, decimals int) float64 {
	y := (x - c.offset) * c.factor
	if c.whole() {
		return y
	}
	digits := math.Pow10(decimals + 1)
	return math.Round(y*digits) / digits
}

// whole tells a unit that is so many of another, and no part of one.
func (c conversion) whole() bool { return c.factor == math.Trunc(c.factor) }

// unitOf finds the unit that a figure is written in.
func (s Scale) unitOf(f figure, whole string) (conversion, error) {
	if m, ok := s.read(f.tail); ok {
		return m, nil
	}
	known := slices.DeleteFunc(slices.Clone(s.Units), func(u string) bool { return u == "" })
	usage := fmt.Sprintf("use %s, such as %q", fail.Or(known), s.Example)
	if len(known) == 0 {
		usage = fmt.Sprintf("write the number alone, such as %q", s.Example)
	}
	if f.tail == "" {
		var write []string
		for _, u := range known[:min(len(known), mostChoices)] {
			write = append(write, whole+" "+u)
		}
		return conversion{}, (&Misread{What: s.What + " needs a unit", Write: write}).fault()
	}
	what := s.What + " is not given in " + quoted(f.tail)
	if minutes, seconds, ok := clock(f); ok && slices.Contains(s.Units, "s") {
		return conversion{}, rewrite(what, Number(minutes*60+seconds)+" s", Number((minutes*60+seconds)/60)+" h")
	}
	if f.tail == "K" && slices.Contains(s.Units, "°C") {
		usage = "take 273.15 off and write °C"
	}
	if words := strings.Fields(f.tail); len(words) > 1 {
		for n := len(words) - 1; n > 0; n-- {
			tail := strings.TrimRight(strings.Join(words[:n], " "), ",;.")
			if _, ok := s.read(tail); ok && strings.HasSuffix(whole, f.tail) {
				return conversion{}, (&Misread{What: what, Write: []string{strings.TrimSuffix(whole, f.tail) + tail}, Do: "the rest belongs into a note:"}).fault()
			}
		}
	}
	return conversion{}, wrong(what, usage)
}

const mostChoices = 3 // of units that an error offers

// read finds the unit of the scale that a word stands for.
func (s Scale) read(word string) (conversion, bool) {
	if slices.Contains(s.Units, word) {
		return conversion{word, 0, 1}, true
	}
	if m, ok := find(word, s.Units); ok {
		return conversion{m.unit, 0, m.factor}, true
	}
	if _, ok := find(word, []string{fahrenheit}); ok && slices.Contains(s.Units, "°C") {
		return conversion{"°C", freezingInF, celsiusInOneOf}, true
	}
	return conversion{}, false
}

// clock reads "2:45" of a watch.
func clock(f figure) (a, b float64, ok bool) {
	after, found := strings.CutPrefix(f.tail, ":")
	b, err := strconv.ParseFloat(after, 64)
	return f.number, b, found && err == nil && len(after) == 2 && b < 60 && f.decimals == 0
}

// Words of a share, and the share.
var (
	shareWords = []string{"half", "third", "quarter", "two thirds", "three quarters"}
	shares     = []string{"50 %", "33 %", "25 %", "67 %", "75 %"}
)

// noNumber refuses a text that begins with no number.
func (s Scale) noNumber(text, whole string) error {
	if m := about.FindStringSubmatch(text); m != nil && text == whole {
		return (&Misread{What: quoted(text) + " does not say by how much it may be off", Write: []string{m[1]}, Do: "if you know by how much, add ± and that"}).fault()
	}
	if i := slices.Index(shareWords, strings.TrimPrefix(strings.TrimPrefix(strings.ToLower(text), "a "), "one ")); i >= 0 && slices.Contains(s.Units, "%") {
		return rewrite(quoted(text)+" is written as a share", shares[i])
	}
	return wrong(quoted(text)+" does not begin with a number", fmt.Sprintf("write %s like %q", s.What, s.Example))
}
