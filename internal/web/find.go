package web

import (
	"context"
	"net/http"

	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/source"
)

// Pantry knows the foods of the tables that are loaded.
type Pantry interface {
	// Find gives foods whose names have the words, or nearly, the best first.
	Find(ctx context.Context, words string, most int) ([]Hit, error)
	// Food gives what a table says of a food, by its code or its exact name.
	Food(ctx context.Context, name string) (*Stock, error)
	// Rank gives the foods with the most of a constituent.
	Rank(ctx context.Context, ask Ranking) (*Ranked, error)
}

// Hit is a food that a search found.
type Hit struct {
	*food.Food
	Matched string // the name that was found
	Near    bool   // no name has all the words
	Label   bool   // nor has any, and the label of this food does
}

// Stock is a food with all that its table says of it.
type Stock struct {
	*food.Food
	Columns []food.Column // of the table
	Cited   func(id string) (source.Work, bool)
}

// mostHits is how many foods a search shows: our own bound, of what a hand on a phone still looks through.
const mostHits = 12

// found is the panel of a search.
type found struct {
	panel
	Words string
	Hits  []foundFood
	Near  bool // no name has all the words
	Label bool // nor has any, and labels do
	Pots  []string
}

// foundFood is a food of a search with its profile.
type foundFood struct {
	ID, Name, Also string
	Profile        []sample
}

func (s foodPanels) find(w http.ResponseWriter, r *http.Request) {
	words := r.FormValue("q")
	p := found{panel: s.shelfOf(r, "Foods"), Words: words}
	hits, err := s.kitchen.Find(r.Context(), words, mostHits)
	if err = p.wrong(err); err != nil {
		fails(w, err)
		return
	}
	foods := make([]*food.Food, len(hits))
	for i, h := range hits {
		foods[i] = h.Food
		x := foundFood{ID: h.ID.String(), Name: clean.Name(h.Name())}
		if matched := clean.Name(h.Matched); matched != "" && matched != x.Name {
			x.Also = matched
		}
		p.Hits, p.Near, p.Label = append(p.Hits, x), p.Near || h.Near, p.Label || h.Label
	}
	for i, profile := range profiles(foods) {
		p.Hits[i].Profile = profile
	}
	p.Pots = s.pots(p.Drink)
	p.open(w, "find", p)
}

// shelfOf begins a panel about foods, which may be for a drink.
func (s foodPanels) shelfOf(r *http.Request, title string) panel {
	name := r.FormValue("drink")
	if _, err := s.folder.Read(name); err != nil {
		name = "" // of a drink that is not there nobody can say anything
	}
	return panelOf(r, title, name)
}

// pots names the components of a saved drink, into which a food may go; the build is always there.
func (s foodPanels) pots(name string) []string {
	text, err := s.folder.Read(name)
	if name == "" || err != nil {
		return nil
	}
	d, _ := drink.Parse(name, text, s.folder.Beside) // what is wrong with it its bench says
	var list []string
	for _, c := range d.Components {
		list = append(list, c.Name)
	}
	return list
}
