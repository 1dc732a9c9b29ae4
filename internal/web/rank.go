package web

import (
	"net/http"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// Ranking asks for the foods with the most of a constituent.
type Ranking struct {
	Of      string   // a tagname, or words: malic acid
	Without []string // words for allergens
	Liquid  bool     // of liquids alone
	Most    int      // foods
}

// Ranked is the answer, per 100 g.
type Ranked struct {
	Of    *constituent.Constituent
	Foods []RankedFood

	NoFigure int // foods in which nobody has measured it
	None     int // that hold none, or less than could be told
	Left     int // that hold, or may hold, what is to be left out
}

// RankedFood is a food of a ranking.
type RankedFood struct {
	ID          food.ID
	Value       food.Value
	Name        string
	Works       []source.Work
	NotAssessed bool // nobody has looked whether it holds what is to be left out
	OfDrinks    bool // drinks are made of it
	Pure        bool // it is the constituent itself
}

// mostRanked is how many foods a ranking shows: our own bound.
const mostRanked = 20

// rank is the panel of a ranking.
type rank struct {
	panel
	Of, Without string
	Liquid      bool
	Words, Unit string
	Foods       []rankedRow
	Unassessed  bool
	LeftOut     []string
	Notes       sheet.Footnotes
	Allergens   []string // words that may be written
	Figures     []constituent.ID
}

// rankedRow is a line of it.
type rankedRow struct {
	ID, Name    string
	Sample      sample
	Cited       string
	NotAssessed bool
	Apart       bool // the first of the foods that drinks are not made of
}

// offered are the constituents that a ranking proposes: what is sweet, sour and bitter in a drink.
var offered = []constituent.ID{constituent.Sugar, "CITAC", "MALAC", "LACAC", "TARAC", constituent.Caffeine}

func (s foodPanels) rank(w http.ResponseWriter, r *http.Request) {
	p := rank{
		panel: s.shelfOf(r, "Foods by what they hold"),
		Of:    r.FormValue("of"), Without: r.FormValue("without"), Liquid: r.FormValue("liquid") != "", Allergens: allergen.Words(), Figures: offered,
	}
	if p.Of == "" {
		p.open(w, "rank", p)
		return
	}
	ranked, err := s.kitchen.Rank(r.Context(), Ranking{Of: p.Of, Without: words(p.Without), Liquid: p.Liquid, Most: mostRanked})
	if err = p.wrong(err); err != nil {
		fails(w, err)
		return
	}
	if ranked != nil {
		p.tell(ranked)
	}
	p.open(w, "rank", p)
}

// words are those of a list that somebody typed.
func words(list string) []string {
	all := strings.Split(list, ",")
	for i := range all {
		all[i] = strings.TrimSpace(all[i])
	}
	return slices.DeleteFunc(all, func(word string) bool { return word == "" })
}

// tell writes a ranking; a bar stands beside the most of what is not the constituent itself.
func (p *rank) tell(of *Ranked) {
	p.Words, p.Unit = sheet.WordsFor(of.Of), of.Of.Unit
	most, pure := 0.0, 0.0
	for _, x := range of.Foods {
		if pure = max(pure, x.Value.Amount); !x.Pure {
			most = max(most, x.Value.Amount)
		}
	}
	if most == 0 {
		most = pure
	}
	for i, x := range of.Foods {
		row := rankedRow{ID: x.ID.String(), Name: clean.Name(x.Name), NotAssessed: x.NotAssessed, Apart: i > 0 && of.Foods[i-1].OfDrinks && !x.OfDrinks}
		row.Sample = written(&food.Food{ID: x.ID}, x.Value, p.Words, p.Unit)
		row.Sample.Bar, row.Sample.Path = min(share(x.Value.Amount, most), whole), "foods."+strconv.Itoa(i)+".figure"
		var cited []string
		for _, work := range x.Works {
			cited = append(cited, sheet.Citation(work))
		}
		row.Cited = p.Notes.All(cited)
		p.Foods, p.Unassessed = append(p.Foods, row), p.Unassessed || x.NotAssessed
	}
	count := func(n int, text string) {
		if n > 0 {
			p.LeftOut = append(p.LeftOut, strconv.Itoa(n)+" "+text)
		}
	}
	count(of.NoFigure, "in which nobody has measured it")
	count(of.None, "that hold none, or less than could be told")
	count(of.Left, "that hold, or may hold, "+p.Without)
}
