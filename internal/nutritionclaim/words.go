package nutritionclaim

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// tell gives the deciding number with its unit and limit, and what to measure; and the same
// in a few words.
func (c *condition) tell(m measured, verdict Verdict) (why, short string) {
	f, in, limit := m.Figure, c.unit, c.is+" "+c.written
	number := c.number
	switch {
	case c.against > 0 && c.basis != ofEnergy: // a share of a reference is told as an amount
		in = c.in
		number = func(x float64) string { return c.number(x * c.against / unit.Hundred) }
		limit = c.is + " " + number(c.limit)
		short = limit
		limit += fmt.Sprintf(" (%s %% of %s %s)", c.written, strconv.FormatFloat(c.against, 'f', -1, 64), in)
	case c.unit == percent:
		limit += " %"
	}
	if short == "" {
		short = limit
	}
	amount, between := number(f.Mean)+" "+in+" "+c.word, ""
	switch {
	case !f.Known && math.IsNaN(f.Most):
		amount, between = c.word, " not known"
	case !f.Known && f.Most > 0:
		amount = "up to " + number(f.Most) + " " + in + " " + c.word
	case verdict == Undecided && math.IsNaN(f.Most):
		between = " and an unknown rest"
	case c.is != atLeast && (verdict != NotAllowed) && number(f.Most) != number(f.Mean):
		between = ", up to " + number(f.Most)
	case verdict == Undecided:
		between = ", up to " + number(f.Most)
	case c.is == atLeast && verdict != NotAllowed && number(f.Low) != number(f.Mean):
		between = ", no less than " + number(f.Low)
	}
	why = amount + " " + m.per + between + ", " + limit
	if verdict == NotYet || verdict == Undecided {
		why += "; measure it"
		if f.partly() && len(f.Unknown) > 0 {
			why += ", or find it out of " + strings.Join(f.Unknown, ", ")
		}
	}
	return why, amount + between + "; " + short
}

// The digits of a number: enough to tell it from its limit.
const (
	fewDigits  = 3
	mostDigits = 9
)

// number prints a figure in the unit of its limit with three digits, none of them beyond the
// third of the limit, or with as many as tell it from the limit. What is less than the last
// of them is no 0.
func (c *condition) number(x float64) string {
	limit := c.limit
	if c.against > 0 && c.basis != ofEnergy {
		limit *= c.against / unit.Hundred
	}
	for digits := fewDigits; ; digits++ {
		decimals := digits
		if limit > 0 {
			decimals = max(digits-1-int(math.Floor(math.Log10(limit))), 0)
		}
		y := rounded(x, 'g', digits)
		shown := rounded(y, 'f', decimals)
		same := math.Abs(shown-limit) <= unit.Closeness*limit && math.Abs(x-limit) > unit.Closeness*limit
		switch {
		case same && limit > 0 && digits < mostDigits:
			continue
		case shown == 0 && x > 0:
			return "<" + strconv.FormatFloat(math.Pow10(-decimals), 'f', -1, 64)
		}
		return strconv.FormatFloat(shown, 'f', -1, 64)
	}
}

// rounded keeps the digits that count.
func rounded(x float64, format byte, digits int) float64 {
	y, err := strconv.ParseFloat(strconv.FormatFloat(x, format, digits, 64), 64)
	if err != nil {
		return x
	}
	return y
}

// Text is what is to be known of claims under the rules.
type Text struct {
	Text, Source string
}

// Texts gives what the rules have to say of claims on a drink of a strength, in % vol.
func Texts(rules string, strength float64) []Text {
	var list []Text
	for _, r := range embedded.Rows("claim_texts.csv") {
		over, limited := r.Optional("above")
		for of := range strings.FieldsSeq(r.Text("rules")) {
			if of == rules && (!limited || !(strength <= over)) { // of an unknown strength too
				list = append(list, Text{r.Text("text"), r.Text("source")})
			}
		}
	}
	return list
}
