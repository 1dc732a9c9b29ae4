package batch

import (
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/prep"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
)

// Purchase is a food of the shopping list.
type Purchase struct {
	Name  string
	Food  *food.Food
	Grams float64 // as it is weighed in: its edible part

	Weighed     float64 // grams that are weighed in with the amounts of the card, each serve by itself or all at once
	Bought      float64 // grams of these with skin and stones: as it is bought
	Edible      float64 // the share of it that is weighed in; NaN: nobody states one, or it is sold without the rest
	Form        string  // as it is sold without what nobody eats: "shelled"
	Whole       float64 // grams it would be with that
	Millilitres float64 // NaN if nobody states a density
	Pieces      float64 // of Piece; NaN if nobody says what one weighs
	Piece       string
	Gas         bool    // it comes in charges: Pieces are charges
	Shot        float64 // grams of a coffee that is pulled, not bought: Pieces are shots; 0: it is no such
	Melts       bool    // it is ice: what melts of it
	Of          []Part
	Sold
}

// Part is how much of a purchase goes where.
type Part struct {
	Pot   string // "": the drink
	Grams float64
}

// shop lists what is bought: as much as is weighed in, as the card has it.
func (m *maker) shop(runs []*assay.Assay) {
	b := m.out
	b.Purchases = m.purchases(m.poured, m.yields)
	for _, a := range runs {
		poured, yields := map[string]float64{}, map[string]assay.Yield{}
		for _, y := range a.Yields {
			yields[y.Component] = y
			for _, p := range y.Poured {
				poured[p.Path] += p.Grams
			}
		}
		for i, p := range m.purchases(poured, yields) {
			b.Purchases[i].Weighed = max(b.Purchases[i].Weighed, p.Grams)
		}
	}
	for i := range b.Purchases {
		b.Purchases[i].bought(b)
	}
	m.sell()
}

// purchases adds up what is weighed in, waters and ice too, in the order in which it is first taken.
func (m *maker) purchases(poured map[string]float64, yields map[string]assay.Yield) []Purchase {
	var list []Purchase
	at := map[string]int{} // by food, or by what a step brings
	add := func(pot string, f *food.Food, name string, grams float64) {
		key := f.ID.String()
		if f == m.Recipe.Water.Food {
			key = name
		}
		i, ok := at[key]
		if !ok {
			i = len(list)
			at[key] = i
			list = append(list, Purchase{Name: name, Food: f, Melts: key == ice})
		}
		p := &list[i]
		p.Grams += grams
		if n := len(p.Of); n > 0 && p.Of[n-1].Pot == pot {
			p.Of[n-1].Grams += grams
		} else {
			p.Of = append(p.Of, Part{pot, grams})
		}
	}
	lines := func(pot string, from []drink.Line, times float64) {
		for _, line := range from {
			if in := m.Recipe.Lines[line.Path]; in.Component == nil {
				grams, ok := poured[line.Path]
				if !ok {
					grams = m.grams(line)
				}
				add(pot, in.Profile.Food, m.Recipe.Called[m.Recipe.PartOf(line)], grams*times)
			}
		}
	}
	steps := func(pot string, from []drink.Step) {
		for _, step := range from {
			lines(pot, step.Lines(), m.times[pot])
			if f, name, grams := m.brought(yields[pot], step); f != nil {
				add(pot, f, name, grams*m.times[pot])
			}
		}
	}
	for _, p := range m.out.Pots {
		c, _ := m.Recipe.Drink.Component(p.Name)
		lines(p.Name, c.Ingredients, p.Times)
		steps(p.Name, c.Steps)
	}
	lines("", m.Recipe.Drink.Build, m.times[""])
	steps("", m.Recipe.Drink.Finish)
	lines("", m.Recipe.Drink.Garnish, m.times[""])
	return list
}

// Names of what a step brings.
const (
	ice   = "Ice, what melts of it"
	water = "Water"
)

// brought is what a step brings that no line names: gas, melted ice, water.
func (m *maker) brought(y assay.Yield, step drink.Step) (f *food.Food, name string, grams float64) {
	switch s := step.(type) {
	case *drink.Carbonate:
		if s.Charge != nil {
			return prep.Gas(), prep.Gas().Name(), s.Charge.Base()
		}
	case *drink.Foam: // other gases stand with their siphons
		if s.Gas == drink.CO2 {
			return prep.Gas(), prep.Gas().Name(), s.Charge.Base()
		}
	case *drink.Chill:
		return m.Recipe.Water.Food, ice, added(y, step)
	case *drink.Dilute:
		return m.Recipe.Water.Food, water, added(y, step)
	}
	return nil, "", 0
}

// added is what a step added to a pot.
func added(y assay.Yield, step drink.Step) float64 {
	for _, s := range y.Steps {
		if s.Path == step.StepPath() {
			return s.Added
		}
	}
	return 0
}

// bought turns what is weighed in into what is bought.
func (p *Purchase) bought(b *Batch) {
	p.Bought, p.Edible, p.Millilitres, p.Pieces = p.Weighed, p.Food.Edible, math.NaN(), math.NaN()
	if food.Stated(p.Edible) && p.Edible > 0 && p.Edible < 1 {
		p.Bought = p.Weighed / p.Edible
		if form, ok := limits().sold[p.Food.Group]; ok {
			p.Bought, p.Whole, p.Edible = p.Weighed, p.Bought, math.NaN()
			p.Form = form
		}
	} else {
		p.Edible = math.NaN()
	}
	if p.Food.Density.GramsPerMl > 0 && p.Food.ID != prep.Gas().ID && !p.Melts {
		p.Millilitres = p.Weighed / p.Food.Density.GramsPerMl
	}
	if p.Food.ID == prep.Gas().ID {
		p.Gas, p.Pieces = true, 0
		for _, c := range b.Charges() {
			if c.Of == solution.CarbonDioxide.Name() {
				p.Pieces += c.Count
			}
		}
		return
	}
	if shot := limits().shots[p.Food.ID.String()]; shot > 0 {
		p.Pieces, p.Piece, p.Shot = p.shots(b, shot), "shot", shot
		return
	}
	for _, word := range []string{unit.OnePiece, "medium", "large"} { // a size is counted where no piece is
		for _, portion := range p.Food.Portions { // of edible grams
			if unit.IsPortion(portion.Name, word) && portion.Grams > 0 {
				p.Pieces, p.Piece = p.Weighed/portion.Grams, portion.Name
				return
			}
		}
	}
}

// shots is how often a coffee is pulled.
func (p *Purchase) shots(b *Batch, grams float64) float64 {
	n := 0.0
	for _, of := range p.Of {
		i := slices.IndexFunc(b.Pots, func(x Pot) bool { return x.Name == of.Pot && x.Shot != nil })
		if i >= 0 {
			n += b.Pots[i].Shot.Count
		} else {
			n += wholly(of.Grams / grams)
		}
	}
	return n
}

// Charges lists the bottles of the drink and of its pots.
func (b *Batch) Charges() []Charge {
	var list []Charge
	for _, p := range b.Pots {
		list = append(list, p.Bottles...)
	}
	return append(list, b.Bottles...)
}
