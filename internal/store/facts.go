package store

import (
	"encoding/json"
	"fmt"
	"strconv"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// The places of a value in the text of its food; see the migration.
const (
	atAmount = iota
	atState
	atSource
	atRef
	atN
	atSD
	atLow
	atHigh
	atMost
	atLine
	places
)

// appendFacts writes the values of a food as the text that is kept; keyOf gives what stands for a
// source or a ref.
func appendFacts(to []byte, values []food.Value, keyOf func(to []byte, text string) []byte) []byte {
	to = append(to, '{')
	for i, v := range values {
		if i > 0 {
			to = append(to, ',')
		}
		to = appendQuoted(to, string(v.Constituent))
		to = append(to, ':', '[')
		to = appendNumber(to, v.Amount)
		to = append(to, ',')
		to = strconv.AppendInt(to, int64(v.State), 10)
		to = append(to, ',')
		to = keyOf(to, v.Source)
		to = append(to, ',')
		to = keyOf(to, v.Ref)
		switch {
		case food.Stated(v.SD) || food.Stated(v.Low) || food.Stated(v.High) || food.Stated(v.Limit) || v.Line > 0:
			to = append(to, ',')
			to = strconv.AppendInt(to, int64(v.N), 10)
			for _, x := range [...]float64{v.SD, v.Low, v.High, v.Limit} {
				to = append(to, ',')
				to = appendNumber(to, x)
			}
			if v.Line > 0 {
				to = append(to, ',')
				to = strconv.AppendInt(to, int64(v.Line), 10)
			}
		case v.N > 0:
			to = append(to, ',')
			to = strconv.AppendInt(to, int64(v.N), 10)
		}
		to = append(to, ']')
	}
	return append(to, '}')
}

func appendNumber(to []byte, x float64) []byte {
	if !food.Stated(x) {
		return append(to, "null"...)
	}
	return strconv.AppendFloat(to, x, 'g', -1, 64)
}

// appendQuoted writes a text of JSON. Most are ids, which need no care.
func appendQuoted(to []byte, text string) []byte {
	for i := range len(text) {
		if c := text[i]; c < ' ' || c > '~' || c == '"' || c == '\\' {
			quoted, _ := json.Marshal(text) // of a string it gives no error
			return append(to, quoted...)
		}
	}
	to = append(to, '"')
	to = append(to, text...)
	return append(to, '"')
}

// factsOf reads the values of a food from its text, in its order; textOf gives what a key stands for.
func factsOf(text []byte, textOf func(key int64) (string, error)) ([]food.Value, error) {
	s := scanner{text: text}
	s.want('{')
	var all []food.Value
	for more := !s.have('}'); more; more = s.next('}') {
		v := food.Value{Constituent: constituent.ID(s.quoted()), Amount: food.None, SD: food.None, Low: food.None, High: food.None, Limit: food.None}
		s.want(':')
		s.want('[')
		at := 0
		for more := !s.have(']'); more; more = s.next(']') {
			if err := s.place(&v, at, textOf); err != nil {
				return nil, err
			}
			at++
		}
		all = append(all, v)
	}
	if !s.ended() {
		return nil, fmt.Errorf("the values of a food cannot be read from byte %d on", s.at)
	}
	return all, nil
}

// place reads what stands in a place of a value.
func (s *scanner) place(v *food.Value, at int, textOf func(int64) (string, error)) (err error) {
	switch at {
	case atSource:
		v.Source, err = s.shared(textOf)
	case atRef:
		v.Ref, err = s.shared(textOf)
	case atState:
		v.State = estimate.State(s.whole())
	case atN:
		v.N = int(s.whole())
	case atLine:
		v.Line = int(s.whole())
	case atAmount:
		v.Amount = s.number()
	case atSD:
		v.SD = s.number()
	case atLow:
		v.Low = s.number()
	case atHigh:
		v.High = s.number()
	case atMost:
		v.Limit = s.number()
	default:
		s.bad = true
	}
	return err
}

// shared reads a text, or the key of one that many share.
func (s *scanner) shared(textOf func(int64) (string, error)) (string, error) {
	switch {
	case s.bad || s.at >= len(s.text):
		s.bad = true
		return "", nil
	case s.text[s.at] == '"':
		return s.quoted(), nil
	}
	key := s.whole()
	if key == 0 || s.bad {
		return "", nil
	}
	return textOf(key)
}
