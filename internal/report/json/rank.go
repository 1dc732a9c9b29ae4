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
	By          string `json:"by,omitempty"` // borrowed or kin: nobody measured this food's own
	NotAssessed bool   `json:"allergens_not_assessed,omitempty"`
	Sources     []work `json:"sources"`
	OfDrinks    bool   `json:"of_drinks"` // what drinks are made of; listed first
}

// RankHead says what a ranking is of.
type RankHead struct {
	Constituent, Name, Unit, Per string
	LeftOut                      LeftOut
	Without                      int // foods left out for their allergen
}

// LeftOut counts by why foods are not in a ranking: those that drinks are made of,
// or those of the groups asked for.
type LeftOut struct {
	Foods    int `json:"of_foods"`
	NoFigure int `json:"no_figure"`
	None     int `json:"none_or_below_limit"`
	Few      int `json:"few_samples"`
	NoBasis  int `json:"no_basis"`
}

// leftOut adds those that hold, or may hold, the allergen that was to be left out.
type leftOut struct {
	LeftOut
	Without int `json:"allergen,omitempty"`
}

// RankedOf makes a line of a ranking. sd may be NaN.
func RankedOf(food, name string, figure, sd, per100g float64, unit string, n int, state, by string, notAssessed bool, works []source.Work) Ranked {
	r := Ranked{
		Food: food, Name: name, Figure: number(figure), SD: number(sd), Per100g: number(per100g), Unit: unit, N: n,
		State: state, By: by, NotAssessed: notAssessed, Sources: []work{},
	}
	for _, w := range works {
		r.Sources = append(r.Sources, workOf(w))
	}
	return r
}

// Rank writes sipsum.rank/1.
func Rank(w io.Writer, head RankHead, list []Ranked) error {
	return write(w, struct {
		Schema      string   `json:"schema"`
		Constituent string   `json:"constituent"`
		Name        string   `json:"name"`
		Unit        string   `json:"unit"`
		Per         string   `json:"per"`
		Foods       []Ranked `json:"foods"`
		LeftOut     leftOut  `json:"left_out"`
	}{"sipsum.rank/1", head.Constituent, head.Name, head.Unit, head.Per, list, leftOut{head.LeftOut, head.Without}})
}
