package sheet

import (
	"slices"

	"sipsum/internal/allergen"
	"sipsum/internal/clean"
	"sipsum/internal/label"
)

// Menu is several drinks side by side, under the same rules.
type Menu struct {
	Program string
	Seed    uint64
	Draws   int
	Rules   []string
	Drinks  []Offer
}

// Offer is what a menu tells of a drink: of the calculation nothing is kept.
type Offer struct {
	File      string
	Name      string
	Serves    int
	ServingG  float64
	ServingMl float64       // 0 if nobody knows it
	Cards     []label.Card  // one for each of the menu's rules
	Allergens []Declaration // one for each of the menu's rules
	Open      []Line        // what somebody has to look at
	Against   []string      // readings that contradict their recipe
	Decide    bool          // somebody has to say which is right before either is used
	Advice    []string
	TooMuch   []string // what it may not be served with, in a sentence each
}

// Offer tells a drink in short.
func (s *Sheet) Offer(file string) Offer {
	a := s.Assay
	return Offer{
		File: file, Name: a.Drink.Name, Serves: a.Drink.Serves, ServingG: a.Mass.Mean, ServingMl: factsOf(a).ServingMl,
		Cards: s.Cards(), Allergens: s.Allergens(), Open: teller{s, english}.toAsk(s.Allergens()), Against: Contradictions(s), Decide: Contradicted(s), Advice: adviceOf(s.Cautions(), english), TooMuch: overdoses(s.Cautions(), english),
	}
}

// SideBySide are the figures of drinks on one basis of one set of rules: those drinks whose
// cards have that basis, and the rows that any of them has.
type SideBySide struct {
	Rules, Title, Basis string
	Drinks              []int // places in the menu
	Rows                []MenuRow
}

// MenuRow is a row of a declaration; a cell for each of the drinks. Row is nil where the
// card of a drink has no such row.
type MenuRow struct {
	Key    string
	Label  string
	Indent int
	Rows   []*label.Row
}

// Figures sets the declarations side by side: by rules, then by basis as they print them.
func (m *Menu) Figures() []SideBySide {
	var list []SideBySide
	for i, rules := range m.Rules {
		var bases []string
		for _, d := range m.Drinks {
			for _, b := range d.Cards[i].Columns {
				if !slices.Contains(bases, b) {
					bases = append(bases, b)
				}
			}
		}
		for _, basis := range bases {
			list = append(list, m.sideBySide(rules, i, basis))
		}
	}
	return list
}

func (m *Menu) sideBySide(rules string, of int, basis string) SideBySide {
	t := SideBySide{Rules: rules, Basis: basis}
	for n, d := range m.Drinks {
		if !slices.Contains(d.Cards[of].Columns, basis) {
			continue
		}
		t.Title = d.Cards[of].Title
		t.Drinks = append(t.Drinks, n)
		t.take(&m.Drinks[n].Cards[of])
	}
	for i := range t.Rows {
		for _, n := range t.Drinks {
			t.Rows[i].Rows = append(t.Rows[i].Rows, rowOf(&m.Drinks[n].Cards[of], t.Rows[i].Key))
		}
	}
	return t
}

// take gives each row of a card its place among those that are there: behind the one that
// it follows on the card.
func (t *SideBySide) take(c *label.Card) {
	at := 0
	for _, r := range c.Rows {
		if i := slices.IndexFunc(t.Rows, func(have MenuRow) bool { return have.Key == r.Key }); i >= 0 {
			at = i + 1
			continue
		}
		t.Rows = slices.Insert(t.Rows, at, MenuRow{Key: r.Key, Label: daggered(clean.Name(r.Label), r.FromMemory), Indent: r.Indent})
		at++
	}
}

func rowOf(c *label.Card, key string) *label.Row {
	for i := range c.Rows {
		if c.Rows[i].Key == key {
			return &c.Rows[i]
		}
	}
	return nil
}

// Matrix says under one set of rules how each drink stands to each class: a state in every
// cell, for no cell reads as "no".
type Matrix struct {
	Rules   string
	Classes []allergen.Class
	States  [][]allergen.State // by drink, then by class
	Within  [][]Held           // the same of what is in the class: the nut, the cereal
}

// Held is what of a class of allergens a drink contains, and what may get in beside it.
type Held struct{ Contains, MayContain []string }

// Matrices gives the allergen matrix under each of the rules.
func (m *Menu) Matrices() []Matrix {
	var list []Matrix
	for i, rules := range m.Rules {
		x := Matrix{Rules: rules, Classes: allergen.Classes(rules)}
		for _, d := range m.Drinks {
			states := make([]allergen.State, len(x.Classes))
			within := make([]Held, len(x.Classes))
			for j, c := range x.Classes {
				states[j] = d.Allergens[i].State(c.Code)
				within[j].Contains, within[j].MayContain = d.Allergens[i].Within(c.Code)
			}
			x.States, x.Within = append(x.States, states), append(x.Within, within)
		}
		list = append(list, x)
	}
	return list
}

// NotAssessed reports whether somebody has to decide about a food of any of the drinks.
func (m *Menu) NotAssessed() bool {
	return slices.ContainsFunc(m.Drinks, func(d Offer) bool { return len(undecided(d.Allergens)) > 0 })
}
