package unit

import (
	"math"
	"strconv"
	"strings"
)

// Restate puts another amount in the place of the one that a text begins with; all that stands
// behind it stays. Where the number alone says it, unit and ± stay as they are written.
func Restate(text string, to Amount) (string, error) {
	from := len(text) - len(strings.TrimLeft(text, " "))
	s := scan{whole: PlainSpaces(text[from:])}
	if len(s.whole) != len(text)-from { // a wide space has more bytes than a plain one
		text = text[:from] + s.whole
	}
	s.rest = s.whole
	if _, err := s.amount(); err != nil {
		return "", err
	}
	number := strconv.FormatFloat(to.Number, 'f', to.Decimals, 64)
	_, after := cutNumber(s.whole)
	if next := number + after; reads(next, to) {
		return text[:from] + next, nil
	}
	whole := to
	whole.Number, _ = strconv.ParseFloat(number, 64)
	return text[:from] + whole.String() + s.rest, nil
}

// reads reports whether a text begins with an amount.
func reads(text string, a Amount) bool {
	got, _, err := parseAmount(text)
	near := func(x, y float64) bool { return math.Abs(x-y) <= Closeness*math.Max(math.Abs(x), math.Abs(y)) }
	return err == nil && near(got.Number, a.Number) && near(got.Half, a.Half) && got.Sigma == a.Sigma && got.Measure == a.Measure
}
