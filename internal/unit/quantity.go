package unit

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Quantity is a number in a unit that is not a kitchen measure.
type Quantity struct {
	Number   float64
	Half     float64 // half-width of the range in Unit, or the sd; 0 if none was stated, or ± 0
	Exact    bool    // ± 0 was stated: it is what it says
	Sigma    bool    // Half is one standard deviation
	Unit     string  // "°C", "g/ml", "kJ", "%", "min", …; "" for pH and °Brix
	Decimals int     // decimals written
}

// String writes a quantity as a drink file does.
func (q Quantity) String() string {
	of := ""
	if q.Unit != "" {
		of = " " + q.Unit
	}
	text := strconv.FormatFloat(q.Number, 'f', -1, 64) + of
	if q.Half > 0 || q.Exact {
		text += " ± " + strconv.FormatFloat(q.Half, 'f', -1, 64) + of
	}
	if q.Sigma {
		text += " sd"
	}
	return text
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

// Parse reads "NUMBER UNIT [± NUMBER UNIT [sd]]", or a range "60-65 °C", which is the ± that it
// is. A unit that stands once is that of both numbers. The error is a *fail.Error without a
// place; its cause is a *Misread.
func (s Scale) Parse(text string) (Quantity, error) {
	q, err := s.parse(text)
	if err != nil {
		err = settle(err, func(text string) error { _, err := s.parse(text); return err })
	}
	return q, err
}

func (s Scale) parse(text string) (Quantity, error) {
	text = strings.TrimSpace(unitSigns.Replace(PlainSpaces(text)))
	main, spread, ranged := cutSpread(text)
	first, second, isRange := cutRange(main)
	if isRange && ranged {
		return Quantity{}, wrong(quoted(text)+" states its range twice", "keep the range or the ±")
	}
	q := Quantity{}
	if ranged {
		second = spread
		if cut, found := strings.CutSuffix(spread, " sd"); found {
			second, q.Sigma = cut, true
		}
	}
	a, err := s.figure(first, text)
	if err != nil {
		return Quantity{}, err
	}
	b := a
	if isRange || ranged {
		if b, err = s.figure(second, text); err != nil {
			return Quantity{}, err
		}
	}
	if a.tail == "" {
		a.tail = b.tail
	} else if b.tail == "" {
		b.tail = a.tail
	}
	in, err := s.unitOf(a, text)
	if err != nil {
		return Quantity{}, err
	}
	if again, err := s.unitOf(b, text); err != nil {
		return Quantity{}, err
	} else if again != in {
		return Quantity{}, s.notARange(text)
	}
	q.Unit, q.Decimals, q.Number = in.unit, max(a.decimals, b.decimals), in.value(a.number, a.decimals)
	switch {
	case isRange:
		low, high := q.Number, in.value(b.number, b.decimals)
		if low >= high {
			return Quantity{}, wrong(quoted(text)+" is not a range", "write the smaller figure first")
		}
		q.Number, q.Half = (low+high)/2, (high-low)/2
	case ranged:
		q.Decimals, q.Half, q.Exact = a.decimals, b.number*in.factor, b.number == 0
	case !in.whole(): // half of the last digit that was read, not of one in another unit
		q.Half = math.Pow(10, -float64(a.decimals)) / 2 * in.factor
	}
	return q, s.sound(q, text, isRange || ranged)
}

// sound says what is wrong with a quantity that has been read.
func (s Scale) sound(q Quantity, text string, ranged bool) error {
	low, high := s.Span(q.Unit)
	switch {
	case q.Number < low || q.Number > high:
		return wrong(fmt.Sprintf("%s is out of range for %s", quoted(text), s.What),
			strings.TrimSpace("it lies between "+Number(low)+" and "+Number(high)+" "+q.Unit))
	case q.Half < 0 || q.Half > high-low:
		return s.notARange(text)
	case ranged && q.Unit == "°C": // which has no end at zero, and no share of it means anything
		if low >= 0 && (q.Number-q.Half < low || q.Number+q.Half > high) {
			return wrong(quoted(text)+" reaches out of what "+s.What+" can be", "it lies between "+Number(low)+" and "+Number(high)+" °C: write a smaller ±")
		}
	case ranged && low >= 0:
		if what, do := BelowZero(text, q.Number, q.Half, q.Sigma, q.Unit); what != "" {
			return wrong(what, do)
		}
	}
	return nil
}

func (s Scale) notARange(text string) error {
	return wrong(fmt.Sprintf("%s is not a range of %s", quoted(text), s.What), "write the same unit on both sides of ±, such as \""+s.Example+"\"")
}

var (
	spreadSign = regexp.MustCompile(`±|\+ ?/ ?[-−–]|\+[-−–]`)
	between    = regexp.MustCompile(`^[-−]?[0-9½⅓⅔¼¾⅛][0-9./,]*[^-−–—0-9]*?( ?[-−–—] ?| to )[-−]?[0-9½⅓⅔¼¾⅛]`)
)

// StatesSpread tells whether a text has a ±, however it is written.
func StatesSpread(text string) bool { return spreadSign.MatchString(text) }

// cutSpread parts a text at its ±.
func cutSpread(text string) (main, spread string, found bool) {
	at := spreadSign.FindStringIndex(text)
	if at == nil {
		return text, "", false
	}
	return strings.TrimSpace(text[:at[0]]), strings.TrimSpace(text[at[1]:]), true
}

// cutRange parts a text at the sign between the two ends of a range, each of which begins with a
// number.
func cutRange(text string) (from, to string, found bool) {
	m := between.FindStringSubmatchIndex(text)
	if m == nil {
		return text, "", false
	}
	if number, _ := cutNumber(text); len(number) > m[2] { // "1-1/2"
		return text, "", false
	}
	return strings.TrimSpace(text[:m[2]]), strings.TrimSpace(text[m[3]:]), true
}

// figure is a number with what stands after it.
type figure struct {
	number   float64
	digits   string // of the number, as written
	decimals int
	tail     string
}

// figure reads NUMBER and keeps what follows; whole is the text that it stands in.
func (s Scale) figure(text, whole string) (figure, error) {
	plain, negative := strings.CutPrefix(strings.Replace(text, "−", "-", 1), "-")
	digits, rest := cutNumber(plain)
	if digits == "" {
		return figure{}, s.noNumber(text, whole)
	}
	n, decimals, err := ParseNumber(digits)
	var m *Misread
	if errors.As(err, &m) && len(m.Write) > 0 {
		write := make([]string, len(m.Write))
		for i, w := range m.Write {
			write[i] = strings.Replace(whole, digits, w, 1)
		}
		return figure{}, rewrite(m.What, write...)
	}
	if negative {
		n, digits = -n, "-"+digits
	}
	return figure{n, digits, decimals, strings.TrimSpace(rest)}, err
}

// quoted shows a text of the file, not all of a long one; what does not print is escaped.
func quoted(text string) string {
	const most = 60
	if r := []rune(text); len(r) > most {
		text = string(r[:most]) + "…"
	}
	return strconv.Quote(text)
}

// PlainSpaces turns the spaces that word processors and phones put between a number and its unit
// (no-break, thin and others of their kind) into plain ones.
func PlainSpaces(text string) string {
	return strings.Map(func(c rune) rune {
		switch c {
		case '\u00a0', '\u202f', '\u205f', '\u3000':
			return ' '
		}
		if c >= '\u2000' && c <= '\u200a' {
			return ' '
		}
		return c
	}, text)
}
