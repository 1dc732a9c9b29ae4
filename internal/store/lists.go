package store

import (
	"fmt"

	"sipsum/internal/food"
)

// appendPortions writes the portions of a food as the text that is kept.
func appendPortions(to []byte, portions []food.Portion) []byte {
	return appendList(to, portions, func(to []byte, p food.Portion) []byte {
		to = append(appendQuoted(to, p.Name), ',')
		to = append(appendNumber(to, p.Grams), ',')
		return appendNumber(to, p.SD)
	})
}

// portionsOf reads them.
func portionsOf(text []byte) ([]food.Portion, error) {
	return listOf(text, "portions", func(s *scanner) (p food.Portion) {
		p.Name = s.quoted()
		s.want(',')
		p.Grams = s.number()
		s.want(',')
		p.SD = s.number()
		return p
	})
}

// appendMarks writes the marks of a food as the text that is kept.
func appendMarks(to []byte, marks []food.Mark) []byte {
	return appendList(to, marks, func(to []byte, m food.Mark) []byte {
		to = append(appendQuoted(to, m.Kind), ',')
		to = append(appendQuoted(to, m.Value), ',')
		to = append(appendNumber(to, m.Share), ',')
		return appendQuoted(to, m.Source)
	})
}

// marksOf reads them.
func marksOf(text []byte) ([]food.Mark, error) {
	return listOf(text, "marks", func(s *scanner) (m food.Mark) {
		m.Kind = s.quoted()
		s.want(',')
		m.Value = s.quoted()
		s.want(',')
		m.Share = s.number()
		s.want(',')
		m.Source = s.quoted()
		return m
	})
}

func appendList[T any](to []byte, list []T, one func([]byte, T) []byte) []byte {
	to = append(to, '[')
	for i, x := range list {
		if i > 0 {
			to = append(to, ',')
		}
		to = append(one(append(to, '['), x), ']')
	}
	return append(to, ']')
}

func listOf[T any](text []byte, what string, one func(*scanner) T) ([]T, error) {
	s := scanner{text: text}
	s.want('[')
	var all []T
	for more := !s.have(']'); more; more = s.next(']') {
		s.want('[')
		all = append(all, one(&s))
		s.want(']')
	}
	if !s.ended() {
		return nil, fmt.Errorf("the %s of a food cannot be read from byte %d on", what, s.at)
	}
	return all, nil
}
