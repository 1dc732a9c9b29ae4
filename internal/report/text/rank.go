package textreport

import (
	"io"
	"math"
	"strconv"

	"sipsum/internal/clean"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/source"
)

// RankHead says what a ranking is of.
type RankHead struct {
	Name, Unit string // of the constituent
	Per        string // "per 100 kcal"
}

// Ranked is one food of a ranking.
type Ranked struct {
	Food, Name  string
	Figure      float64 // what it is ranked by, in the unit, on the basis
	SD          float64 // of the figure; NaN if not stated
	Amount      float64 // in 100 g
	N           int
	State       estimate.State
	By          string // food.ByKin; else empty
	NotAssessed bool   // for the allergen that is to be left out
	Works       []source.Work
}

// Rank prints the foods with the most of a constituent.
func Rank(w io.Writer, head RankHead, list []Ranked, st Style) error {
	p, notes := newPage(st), &footnotes{}
	p.title(clean.UpperFirst(head.Name)+", "+head.Unit+" "+head.Per, "rank")
	if len(list) == 0 {
		p.paragraph(0, 0, "No food: nobody has measured it in the foods asked for.")
		return p.write(w)
	}
	const place, figureWidth, foodWidth = 4, 11, 26
	unassessed := false
	for i, x := range list {
		figure := rounded(x.Figure, placeOf(x))
		name := Clean(x.Name, mostName)
		if x.NotAssessed {
			name, unassessed = name+" ?", true
		}
		var cited []int
		for _, work := range x.Works {
			cited = append(cited, notes.number(citation(work)))
		}
		name += " (" + x.State.String()
		if x.By == food.ByKin {
			name += ", by " + food.ByKin
		}
		if x.N > 0 {
			name += ", n " + strconv.Itoa(x.N)
		}
		name += ")" + signsAfter(cited)
		lead := right(strconv.Itoa(i+1), place-1) + " " + right(figure, figureWidth-2) + "  " + left(Clean(x.Food, mostName), foodWidth-2) + "  "
		p.hanging(lead, place+figureWidth+foodWidth, name)
	}
	if unassessed {
		p.gap()
		p.paragraph(0, 0, "? nobody has assessed this food for the allergen: ask before you use it.")
	}
	p.sources(notes)
	return p.write(w)
}

// placeOf is the last decimal that is printed: the standard deviation's second
// digit, else three digits of the figure.
func placeOf(x Ranked) int {
	if math.IsNaN(x.SD) {
		return place(x.Figure, 0, mostDigits)
	}
	return place(x.Figure, x.SD, mostDigits)
}

func signsAfter(numbers []int) string {
	if len(numbers) == 0 {
		return ""
	}
	return " " + signs(numbers)
}
