package sheet

import (
	"slices"
	"strings"

	"sipsum/internal/caution"
	"sipsum/internal/label"
)

// Cautioned is a caution and the rules that give it; none: all of them do.
type Cautioned struct {
	caution.Caution
	Under []string
}

// Cautions gives each caution once, in the order of the first rules that give it.
func (s *Sheet) Cautions() []Cautioned {
	var list []Cautioned
	all := s.Allergens()
	for _, d := range all {
		for _, c := range d.Cautions {
			i := slices.IndexFunc(list, func(have Cautioned) bool { return have.Code == c.Code && have.Text == c.Text })
			if i < 0 {
				i = len(list)
				list = append(list, Cautioned{Caution: c})
			}
			list[i].Under = append(list[i].Under, d.Rules)
		}
	}
	for i := range list {
		if len(list[i].Under) == len(all) {
			list[i].Under = nil
		}
	}
	return list
}

// NotComplete names the rows of a card that rest on incomplete or missing figures.
func NotComplete(c *label.Card) []string {
	var rows []string
	for _, r := range c.Rows {
		if slices.ContainsFunc(c.Notes, func(n label.Note) bool { return n.Row == r.Key }) {
			rows = append(rows, strings.TrimPrefix(r.Label, "of which "))
		}
	}
	return rows
}
