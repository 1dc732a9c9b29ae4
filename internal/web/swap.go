package web

import (
	"net/http"
	"slices"
	"strconv"

	"sipsum/internal/allergen"
	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/sheet"
)

// Exchange asks for a food in the place of one of a drink.
type Exchange struct {
	Food    string   // its code, or its name
	Without []string // words for allergens
	Less    string   // a constituent of which it is to bring less; empty: none
}

// Swapped is the answer, with the text of the drink that each food makes.
type Swapped struct {
	*sheet.Swapped
	Texts []string // of each of Found
}

// swapPanel is the panel of a swap.
type swapPanel struct {
	panel
	Food, Without, Less string
	Foods               []namedFood // that the drink names
	Allergens           []string
	Line                string
	Place               sheet.Block
	Found               []swapFound
	Rest                []sheet.Block
	Decide              []string
}

// swapFound is a food that may stand there.
type swapFound struct {
	Name  string
	Block sheet.Block
	Odds  odds
	Moves []shift
	Text  string // of the drink with it
}

func (s drinkPanels) askSwap(w http.ResponseWriter, r *http.Request) {
	p, _, err := s.swapOf(r)
	if err != nil {
		fails(w, err)
		return
	}
	p.open(w, "swap", p)
}

// swapOf begins the panel.
func (s drinkPanels) swapOf(r *http.Request) (*swapPanel, File, error) {
	about, file, d, err := s.about(r)
	if err != nil {
		return nil, file, err
	}
	p := &swapPanel{
		panel: about, Allergens: allergen.Words(),
		Food: r.FormValue("food"), Without: r.FormValue("without"), Less: r.FormValue("less"),
	}
	for _, code := range foodsOf(d) {
		name := code
		if stock, err := s.kitchen.Food(r.Context(), code); err == nil { // else the file's own word stands
			name = stock.Name()
		}
		p.Foods = append(p.Foods, namedFood{code, clean.Name(name)})
	}
	return p, file, nil
}

// namedFood is a food as a file has it, and as its table calls it.
type namedFood struct{ Code, Name string }

func (s drinkPanels) swap(w http.ResponseWriter, r *http.Request) {
	p, file, err := s.swapOf(r)
	if err != nil {
		fails(w, err)
		return
	}
	if p.Food == "" { // opened beside a bench
		p.open(w, "swap", p)
		return
	}
	swapped, err := s.kitchen.Swap(r.Context(), file, Exchange{Food: p.Food, Without: words(p.Without), Less: p.Less}, liveDraws)
	if err = p.wrong(err); err != nil {
		fails(w, err)
		return
	}
	if swapped != nil {
		p.tell(swapped)
	}
	p.open(w, "swap", p)
}

// tell writes an answer in the words of its leaf, and of each food what moves in figures.
func (p *swapPanel) tell(x *Swapped) {
	p.Line, p.Decide = clean.Prose(x.Line()), sheet.Contradictions(x.Sheet)
	leaf := x.Leaf()
	p.Place = leaf.Blocks[0]
	after := leaf.Blocks[1:]
	for i, f := range x.Found {
		path := "found." + strconv.Itoa(i)
		found := swapFound{Name: clean.Name(f.Food.Name()), Block: untold(after[i]), Text: x.Texts[i], Odds: oddsOf(f.Sure, f.May, path+".probability_low", path+".probability_high")}
		for k, m := range f.Moves() {
			at := path + ".serving." + strconv.Itoa(k)
			if s := (shift{clean.Name(m.Words), toldOf(m.Before, at+".before"), toldOf(m.After, at+".after")}); s.Moved() {
				found.Moves = append(found.Moves, s)
			}
		}
		p.Found = append(p.Found, found)
	}
	p.Rest = after[len(x.Found):]
}

// untold is a block without the line that the page tells in figures.
func untold(b sheet.Block) sheet.Block {
	b.Lines = slices.DeleteFunc(slices.Clone(b.Lines), func(l sheet.Line) bool { return l.Lead == sheet.ServingThen })
	return b
}

// foodsOf lists the foods that a drink names, each once.
func foodsOf(d *drink.Drink) []string {
	var list []string
	seen := map[string]bool{}
	for _, l := range d.Poured() {
		_, made := d.Component(l.Food)
		if name := l.Food; name != "" && !made && !seen[name] {
			list, seen[name] = append(list, name), true
		}
	}
	return list
}
