package sheet

import (
	"cmp"
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

// Cautions gives each caution once, the worst first, else in the order of the first rules
// that give it.
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
	slices.SortStableFunc(list, func(a, b Cautioned) int { return cmp.Compare(a.Rank, b.Rank) })
	return list
}

// HowBad says what the cautions of a rank have in common.
func HowBad(rank int) string {
	return map[int]string{
		1: "May kill", 2: "May poison or injure", 3: "For some guests", 4: "In the making and keeping", 5: "Law and label",
	}[rank]
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
