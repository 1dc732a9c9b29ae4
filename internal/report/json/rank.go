package jsonreport

import (
	"io"

	"sipsum/internal/source"
)

// Ranked is one food of a ranking.
type Ranked struct {
	Food        string `json:"food"`
	Name        string `json:"name"`
	Figure      number `json:"figure"`
	SD          number `json:"sd"`
	Per100g     number `json:"per_100_g"`
	Unit        string `json:"unit"`
	N           int    `json:"n"`
	State       string `json:"state"`
	By          string `json:"by,omitempty"`
	NotAssessed bool   `json:"allergens_not_assessed,omitempty"`
	Sources     []work `json:"sources"`
}

// RankedOf makes a line of a ranking. sd may be NaN.
func RankedOf(food, name string, figure, sd, per100g float64, unit string, n int, state, by string, notAssessed bool, works []source.Work) Ranked {
	r := Ranked{food, name, number(figure), number(sd), number(per100g), unit, n, state, by, notAssessed, []work{}}
	for _, w := range works {
		r.Sources = append(r.Sources, workOf(w))
	}
	return r
}

// Rank writes sipsum.rank/1.
func Rank(w io.Writer, constituent, per string, list []Ranked) error {
	return write(w, struct {
		Schema      string   `json:"schema"`
		Constituent string   `json:"constituent"`
		Per         string   `json:"per"`
		Foods       []Ranked `json:"foods"`
	}{"sipsum.rank/1", constituent, per, list})
}
