package web

import (
	"net/http"

	"sipsum/internal/clean"
	"sipsum/internal/sheet"
)

// handed is a leaf that a guest is given, or that hangs beside the bar.
type handed struct {
	Head      head
	Drink     string
	Path      string // where the leaf is, in any language
	Leaf      *sheet.Leaf
	Languages []spoken
	Other     string // what the other leaf is called
}

// spoken is a language in which the leaf is written.
type spoken struct {
	sheet.Language
	Here bool
}

func (s handouts) guest(w http.ResponseWriter, r *http.Request) {
	s.hand(w, r, "/guest", (*sheet.Sheet).GuestLeafIn)
}

func (s handouts) allergens(w http.ResponseWriter, r *http.Request) {
	s.hand(w, r, "/allergens", (*sheet.Sheet).AllergensLeafIn)
}

// hand shows a leaf in the language that is asked for.
func (s handouts) hand(w http.ResponseWriter, r *http.Request, path string, leaf func(*sheet.Sheet, string) *sheet.Leaf) {
	file, ok := s.opened(w, r)
	if !ok {
		return
	}
	of, err := s.kitchen.Sheet(r.Context(), file, Ask{Draws: servedDraws})
	if err != nil {
		fails(w, err)
		return
	}
	p := handed{
		Head:  head{Title: clean.Name(of.Assay.Drink.Name), Drink: file.Name, Here: path, Styles: []string{"guest.css"}},
		Drink: file.Name, Path: path, Leaf: leaf(of, r.FormValue("language")),
	}
	p.Other = sheet.OtherLeaf(p.Leaf)
	for _, l := range sheet.Languages() {
		p.Languages = append(p.Languages, spoken{l, l.Code == p.Leaf.Language})
	}
	show(w, http.StatusOK, "handed", p)
}
