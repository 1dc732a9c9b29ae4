package unit

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
)

// scan reads an amount from the beginning of a text.
type scan struct{ whole, rest string }

var (
	plusMinus = regexp.MustCompile(`^ ?(?:±|\+ ?/ ?[-−–]|\+[-−–])`)
	upTo      = regexp.MustCompile(`^ ?(?:[-−–—]|to) ?`)
)

// with gives the whole text with another piece before what is left of it, from a place on that
// an earlier rest marks.
func (s *scan) with(from, piece string) string {
	return s.whole[:len(s.whole)-len(from)] + piece + s.rest
}

// amount reads NUMBER [to NUMBER] UNIT [± NUMBER [UNIT] [sd]]; the unit of the first number may
// stand after the second.
func (s *scan) amount() (Amount, error) {
	a, err := s.number()
	if err != nil {
		return Amount{}, err
	}
	measured, err := s.measure(&a)
	if err != nil {
		return Amount{}, err
	}
	if ranged, err := s.upTo(&a, &measured); err != nil || ranged {
		return a, err
	}
	sign := plusMinus.FindString(s.rest)
	if sign == "" {
		if !measured {
			return Amount{}, s.noUnit()
		}
		return a, nil
	}
	s.rest = strings.TrimLeft(s.rest[len(sign):], " ")
	return a, s.spread(&a, measured)
}

// number reads the number that stands next.
func (s *scan) number() (Amount, error) {
	from := s.rest
	digits, rest := cutNumber(from)
	if digits == "" {
		return Amount{}, s.noNumber()
	}
	s.rest = rest
	n, decimals, err := ParseNumber(digits)
	if err != nil {
		return Amount{}, s.widen(err, from)
	}
	return Amount{Number: n, Decimals: decimals}, nil
}

// measure reads the unit that stands next, if one does. Nothing but a sign or another number may
// stand in its place.
func (s *scan) measure(a *Amount) (bool, error) {
	word, m, ok := cutMeasure(s.rest)
	if !ok {
		return false, nil
	}
	a.Measure, s.rest = m, strings.TrimLeft(s.rest, " ")[len(word):]
	return true, nil
}

// cutMeasure gives the unit that a text begins with. One of two words is tried last.
func cutMeasure(text string) (string, Measure, bool) {
	text = strings.TrimLeft(text, " ")
	one, more, _ := strings.Cut(text, " ")
	second, _, _ := strings.Cut(more, " ")
	bare := one
	if i := strings.IndexAny(one, "±+-–—"); i > 0 { // "36 g±2 g", "36g-40g"
		bare = one[:i]
	}
	for _, word := range []string{one, bare, one + " " + second} {
		if m, ok := FindMeasure(word); ok {
			return word, m, true
		}
	}
	return "", Measure{}, false
}

// upTo reads the other end of a range. It is one only if a unit follows: in "36 g - 40 proof rum"
// the number belongs to the food.
func (s *scan) upTo(a *Amount, measured *bool) (bool, error) {
	sign := upTo.FindString(s.rest)
	digits, after := cutNumber(s.rest[len(sign):])
	if sign == "" || digits == "" {
		return false, nil
	}
	end := scan{s.whole, s.rest[len(sign):]}
	to, err := end.number()
	if err != nil {
		return false, err
	}
	if got, _ := end.measure(&to); !got {
		if !*measured {
			s.rest = after
			return false, s.noUnit()
		}
		return false, rewrite(fmt.Sprintf("%q is not read as a range", clip(s.whole)), s.whole[:len(s.whole)-len(s.rest)]+sign+digits+" "+a.Measure.Name+after)
	}
	if !*measured {
		a.Measure, *measured = to.Measure, true
	}
	if to.Measure.Kind != a.Measure.Kind {
		return false, wrong(fmt.Sprintf("%s does not fit %s", to.Measure.Name, a.Measure.Name), "use the same kind of unit at both ends of the range")
	}
	low, high := a.Number, to.Base()/a.Measure.Factor
	if low >= high {
		return false, wrong(fmt.Sprintf("%q is not a range", clip(s.whole[:len(s.whole)-len(end.rest)])), "write the smaller amount first, such as 36-40 g")
	}
	if plusMinus.MatchString(end.rest) {
		return false, wrong(fmt.Sprintf("%q states its range twice", clip(s.whole)), "keep the range or the ±")
	}
	a.Number, a.Half, a.Decimals = (low+high)/2, (high-low)/2, max(a.Decimals, to.Decimals)
	s.rest = end.rest
	return true, nil
}

// spread reads what follows ±: a number, its unit or that of the amount, or a share of the amount.
func (s *scan) spread(a *Amount, measured bool) error {
	half, err := s.number()
	if err != nil {
		return err
	}
	got, _ := s.measure(&half)
	switch {
	case !got && !measured:
		return s.noUnit()
	case !got:
		half.Measure = a.Measure
	case !measured:
		a.Measure = half.Measure
	case half.Measure.Kind == Share && a.Measure.Kind != Share:
		half.Number, half.Measure = half.Base()*a.Number, a.Measure
	case half.Measure.Kind != a.Measure.Kind:
		return wrong(fmt.Sprintf("%s after ± does not fit %s", half.Measure.Name, a.Measure.Name), "use the same kind of unit on both sides of ±")
	}
	a.Half = half.Base() / a.Measure.Factor
	a.Exact = a.Half == 0
	rest := strings.TrimLeft(s.rest, " ")
	if after, found := strings.CutPrefix(rest, "sd"); found && (after == "" || after[0] == ' ') {
		a.Sigma, s.rest = true, after
	}
	if what, do := BelowZero(a.String(), a.Number, a.Half, a.Sigma, a.Measure.Name); what != "" {
		return wrong(what, do)
	}
	return nil
}

// widen gives the error about a number with the whole text in place of the number.
func (s *scan) widen(err error, from string) error {
	var m *Misread
	if !errors.As(err, &m) || len(m.Write) == 0 {
		return err
	}
	write := make([]string, len(m.Write))
	for i, piece := range m.Write {
		write[i] = s.with(from, piece)
	}
	return rewrite(m.What, write...)
}
