package unit

import (
	"math"
	"strconv"
	"strings"
)

// Amount is a quantity as a recipe states it.
type Amount struct {
	Number   float64 // in Measure
	Measure  Measure
	Half     float64 // half-width of the stated range in Measure, or the sd; 0 if none was stated, or ± 0
	Exact    bool    // ± 0 was stated: it is what it says
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
	text := Number(a.Number) + " " + a.Measure.Name
	if a.Half > 0 || a.Exact {
		text += " ± " + Number(a.Half) + " " + a.Measure.Name
	}
	if a.Sigma {
		text += " sd"
	}
	return text
}

// ParseAmount reads "36 g", "1/2 tsp", "36 g ± 3 g" or "36 g ± 1 g sd" and
// gives the rest of the text (the food) untouched. The unit is mandatory. A range
// "36-40 g" is read as the ± that it is. The error is a *fail.Error without a place,
// the caller knows where the text is; its cause is a *Misread.
func ParseAmount(text string) (Amount, string, error) {
	a, rest, err := parseAmount(text)
	if err != nil {
		err = settle(err, func(text string) error {
			_, _, err := parseAmount(text)
			if isCount(text) { // what a piece weighs the food's table knows
				return nil
			}
			return err
		})
	}
	return a, rest, err
}

func parseAmount(text string) (Amount, string, error) {
	s := scan{whole: strings.TrimLeft(text, " ")}
	s.rest = s.whole
	a, err := s.amount()
	if err != nil {
		return Amount{}, "", err
	}
	rest := strings.TrimSpace(s.rest)
	if after, found := strings.CutPrefix(rest, "of "); found { // "2 dashes of bitters"
		rest = strings.TrimSpace(after)
	}
	return a, rest, nil
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

// clip keeps error texts short whatever the file holds.
func clip(text string) string {
	const most = 40
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "…"
	}
	return text
}
