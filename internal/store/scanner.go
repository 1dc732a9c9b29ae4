package store

import (
	"encoding/json"
	"strconv"

	"sipsum/internal/food"
)

// scanner reads the texts that appendFacts writes, which hold no blanks: a tenth of the time that a reader
// of any JSON takes. Once something is not as it should be it is bad and reads nothing more.
type scanner struct {
	text []byte
	at   int
	bad  bool
}

// have takes a sign if it stands here.
func (s *scanner) have(sign byte) bool {
	if s.bad || s.at >= len(s.text) || s.text[s.at] != sign {
		return false
	}
	s.at++
	return true
}

func (s *scanner) want(sign byte) {
	if !s.have(sign) {
		s.bad = true
	}
}

// next tells whether another entry follows in a list that ends with a sign.
func (s *scanner) next(end byte) bool {
	if s.have(end) {
		return false
	}
	s.want(',')
	return !s.bad
}

// ended tells whether all was read, and nothing was bad.
func (s *scanner) ended() bool { return !s.bad && s.at == len(s.text) }

// quoted reads a text.
func (s *scanner) quoted() string {
	from := s.at
	if !s.have('"') {
		s.bad = true
		return ""
	}
	plain := true
	for ; s.at < len(s.text); s.at++ {
		switch s.text[s.at] {
		case '\\':
			plain = false
			s.at++
		case '"':
			s.at++
			if plain {
				return string(s.text[from+1 : s.at-1])
			}
			var text string
			s.bad = json.Unmarshal(s.text[from:s.at], &text) != nil
			return text
		}
	}
	s.bad = true
	return ""
}

// atom is the text of a number, or null.
func (s *scanner) atom() []byte {
	if s.bad {
		return nil
	}
	from := s.at
	for s.at < len(s.text) && s.text[s.at] != ',' && s.text[s.at] != ']' {
		s.at++
	}
	return s.text[from:s.at]
}

// number reads a number; null is None.
func (s *scanner) number() float64 {
	atom := s.atom()
	if string(atom) == "null" {
		return food.None
	}
	x, err := strconv.ParseFloat(string(atom), 64)
	s.bad = s.bad || err != nil
	return x
}

// whole reads a whole number; null is 0.
func (s *scanner) whole() int64 {
	atom := s.atom()
	if string(atom) == "null" {
		return 0
	}
	x, err := strconv.ParseInt(string(atom), 10, 64)
	s.bad = s.bad || err != nil
	return x
}
