package textreport

import (
	"io"
	"math"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/source"
)

// RankHead says what a ranking is of.
type RankHead struct {
	Name, Tag, Unit string // of the constituent
	Per             string // "per 100 kcal"
	Basis           string // the constituent that it is related to; empty: 100 g
	Chosen          bool   // groups were asked for: no food comes first
	LeftOut         LeftOut
	Without         int // foods that hold, or may hold, the allergen to be left out
}

// LeftOut counts by why foods are not in a ranking: those that drinks are made of,
// or those of the groups asked for.
type LeftOut struct {
	Foods    int // in all
	NoFigure int // nobody has measured it
	None     int // they hold none, or less than could be told
	Few      int // of fewer samples than asked for
	NoBasis  int // without what the figures are related to
}

// Ranked is one food of a ranking.
type Ranked struct {
	Food, Name  string
	Figure      float64 // what it is ranked by, in the unit, on the basis
	SD          float64 // of the figure; NaN if not stated
	Amount      float64 // in 100 g
	N           int
	State       estimate.State
	By          string // food.ByKin or food.Borrowed: whose figure it is where nobody measured this food's own
	NotAssessed bool   // for the allergen that is to be left out
	OfDrinks    bool   // drinks are made of it
	Works       []source.Work
}

// Rank prints the foods with the most of a constituent.
func Rank(w io.Writer, head RankHead, list []Ranked, st Style) error {
	p, notes := newPage(st), &footnotes{}
	p.title(clean.UpperFirst(head.name())+", "+head.Unit+" "+head.Per, "rank")
	if len(list) == 0 {
		p.paragraph(0, 0, "No food: "+head.whyNone())
		p.leftOut(head)
		return p.write(w)
	}
	const place, figureWidth, foodWidth = 4, 11, 26
	unassessed := false
	for i, x := range list {
		if i > 0 && !head.Chosen && list[i-1].OfDrinks && !x.OfDrinks {
			p.gap()
			p.paragraph(0, 0, "Other foods:")
		}
		figure := rounded(x.Figure, placeOf(x))
		name := Clean(x.Name, mostName)
		if x.NotAssessed {
			name, unassessed = name+" ?", true
		}
		var cited []int
		for _, work := range x.Works {
			cited = append(cited, notes.Number(citation(work)))
		}
		known := x.State.String()
		switch x.By {
		case food.ByKin:
			known += ", by " + food.ByKin
		case food.Borrowed:
			known = x.By
		}
		name += " (" + known
		if x.N > 0 {
			name += ", n " + strconv.Itoa(x.N)
		}
		name += ")" + signsAfter(cited)
		lead := right(strconv.Itoa(i+1), place-1) + " " + right(figure, figureWidth-2) + "  " + left(Clean(x.Food, mostName), foodWidth-2) + "  "
		const indent = place + figureWidth + foodWidth
		if p.width-indent < leastNames {
			p.line(lead)
			p.paragraph(place, 0, name)
			continue
		}
		p.hanging(lead, indent, name)
	}
	if unassessed {
		p.gap()
		p.paragraph(0, 0, "? nobody has assessed this food for the allergen: ask before you use it.")
	}
	p.leftOut(head)
	p.sources(notes)
	return p.write(w)
}

// name is that of the constituent, with its tagname beside it.
func (h RankHead) name() string {
	if h.Tag == h.Name {
		return h.Name
	}
	return h.Name + " (" + h.Tag + ")"
}

// whyNone says why no food is in the list.
func (h RankHead) whyNone() string {
	if out := h.LeftOut; out.None+out.Few+out.NoBasis+h.Without > 0 {
		return "none of the foods asked for is left to list."
	}
	return "nobody has measured it in the foods asked for."
}

// leftOut says what is missing in the list for want of figures.
func (p *page) leftOut(head RankHead) {
	out := head.LeftOut
	var parts []string
	say := func(n int, text string) {
		if n > 0 {
			parts = append(parts, strconv.Itoa(n)+" "+text)
		}
	}
	say(out.NoFigure, "have no figure for "+head.name())
	say(out.None, "hold none of it, or less than could be told")
	say(out.Few, "have one of too few samples")
	say(out.NoBasis, "have none for "+head.Basis+" to relate it to")
	say(head.Without, "hold the allergen to be left out, or may hold it")
	if len(parts) == 0 {
		return
	}
	of := " foods that drinks are made of: "
	if head.Chosen {
		of = " foods of the groups asked for: "
	}
	p.gap()
	p.paragraph(0, 0, "Left out, of "+strconv.Itoa(out.Foods)+of+strings.Join(parts, "; ")+".")
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
