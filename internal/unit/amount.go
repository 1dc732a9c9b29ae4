package unit

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"sipsum/internal/fail"
)

// Amount is a quantity as a recipe states it.
type Amount struct {
	Number   float64 // in Measure
	Measure  Measure
	Half     float64 // half-width of the stated range in Measure, or the sd; 0 if none was stated
	Sigma    bool    // Half is one standard deviation
	Decimals int     // decimals written, the resolution of the figure
}

// Base gives the number in the base unit: g, ml or a share.
func (a Amount) Base() float64 { return a.Number * a.Measure.Factor }

// Resolution gives one unit of the last digit written, in the base unit.
func (a Amount) Resolution() float64 {
	return math.Pow(10, -float64(a.Decimals)) * a.Measure.Factor
}

// String writes the amount as a recipe would.
func (a Amount) String() string {
	text := strconv.FormatFloat(a.Number, 'f', -1, 64) + " " + a.Measure.Name
	if a.Half > 0 {
		text += " ± " + strconv.FormatFloat(a.Half, 'f', -1, 64) + " " + a.Measure.Name
	}
	if a.Sigma {
		text += " sd"
	}
	return text
}

// ParseAmount reads "36 g", "1/2 tsp", "36 g ± 3 g" or "36 g ± 1 g sd" and
// gives the rest of the text (the food) untouched. The unit is mandatory. The
// error is a *fail.Error without a place: the caller knows where the text is.
func ParseAmount(text string) (Amount, string, error) {
	first, rest, err := parseQuantity(text)
	if err != nil {
		return Amount{}, "", err
	}
	tail, found := strings.CutPrefix(strings.TrimLeft(rest, " "), "±")
	if !found {
		return first, strings.TrimSpace(rest), nil
	}
	half, rest, err := parseQuantity(strings.TrimLeft(tail, " "))
	if err != nil {
		return Amount{}, "", err
	}
	if half.Measure.Kind != first.Measure.Kind {
		return Amount{}, "", wrong(fmt.Sprintf("%s after ± does not fit %s", half.Measure.Name, first.Measure.Name), "use the same kind of unit on both sides of ±")
	}
	first.Half = half.Base() / first.Measure.Factor
	rest = strings.TrimLeft(rest, " ")
	if after, found := strings.CutPrefix(rest, "sd"); found && (after == "" || after[0] == ' ') {
		first.Sigma, rest = true, after
	}
	if what, do := BelowZero(first.String(), first.Number, first.Half, first.Sigma, first.Measure.Name); what != "" {
		return Amount{}, "", wrong(what, do)
	}
	return first, strings.TrimSpace(rest), nil
}

// BelowZero says what is wrong with a range that reaches below zero, and what to write;
// what is empty if nothing is. Of what cannot be negative, a standard deviation beyond
// the figure itself is as wrong as half a range.
func BelowZero(text string, number, half float64, sigma bool, in string) (what, do string) {
	const slack = 1e-9 // 1/3 ± 1/3
	if half <= number*(1+slack) {
		return "", ""
	}
	if in != "" {
		in = " " + in
	}
	most := strconv.FormatFloat(number, 'g', 4, 64) + in
	switch {
	case number == 0:
		return "\"" + text + "\" reaches below zero", "write the middle of the range and half of its width, such as 0.5" + in + " ± 0.5" + in
	case sigma:
		return "the standard deviation in \"" + text + "\" is more than the figure itself", "write one of at most " + most + ", or without sd half of the whole range that it can lie in: " + most + " ± " + most
	}
	return "\"" + text + "\" reaches below zero", "half of the range is at most the figure: write " + most + " ± " + most + ", or less"
}

// parseQuantity reads NUMBER UNIT at the start of text.
func parseQuantity(text string) (Amount, string, error) {
	text = strings.TrimLeft(text, " ")
	end := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("0123456789./,", r) })
	if end < 0 {
		end = len(text)
	}
	if end == 0 {
		return Amount{}, "", wrong(fmt.Sprintf("%q does not begin with an amount", clip(text)), "write a number, a unit and the food, such as \"36 g espresso\"")
	}
	number, decimals, err := ParseNumber(text[:end])
	if err != nil {
		return Amount{}, "", err
	}
	rest := strings.TrimLeft(text[end:], " ")
	word := rest
	if cut := strings.IndexByte(rest, ' '); cut >= 0 {
		word = rest[:cut]
	}
	measure, ok := FindMeasure(word)
	if !ok {
		return Amount{}, "", unknownUnit(text[:end], word)
	}
	return Amount{Number: number, Measure: measure, Decimals: decimals}, rest[len(word):], nil
}

// ParseNumber reads a number with a decimal point or a fraction "1/2" and gives
// the decimals written. A decimal comma is refused with the fix.
func ParseNumber(text string) (float64, int, error) {
	if strings.Contains(text, ",") {
		return 0, 0, wrong(fmt.Sprintf("%q has a comma", text), fmt.Sprintf("write %s with a decimal point", strings.ReplaceAll(text, ",", ".")))
	}
	if over, under, isFraction := strings.Cut(text, "/"); isFraction {
		a, errA := strconv.ParseFloat(over, 64)
		b, errB := strconv.ParseFloat(under, 64)
		if errA != nil || errB != nil || b == 0 {
			return 0, 0, wrong(fmt.Sprintf("%q is not a fraction", text), "write it like 1/2")
		}
		return a / b, 2, nil
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsInf(v, 0) || math.IsNaN(v) {
		return 0, 0, wrong(fmt.Sprintf("%q is not a number", clip(text)), "write it like 12.5")
	}
	_, after, _ := strings.Cut(text, ".")
	return v, len(after), nil
}

func unknownUnit(number, word string) error {
	switch {
	case word == "oz":
		return wrong("\"oz\" is a mass to some and a volume to others", "write g, or fl-oz for the US fluid ounce")
	case strings.Contains(word, ":"):
		return wrong(fmt.Sprintf("%q has no unit after %s", clip(word), number), fmt.Sprintf("write the mass, such as \"%s g %s\", or use portion and count", number, word))
	}
	names := make([]string, 0, len(Measures()))
	for _, m := range Measures() {
		names = append(names, m.Name)
	}
	return wrong(fmt.Sprintf("unknown unit %q", clip(word)), "use one of "+strings.Join(names, " "))
}

func wrong(what, do string) error { return fail.New(fail.Wrong, what, do) }

// clip keeps error texts short whatever the file holds.
func clip(text string) string {
	const most = 40
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "…"
	}
	return text
}
