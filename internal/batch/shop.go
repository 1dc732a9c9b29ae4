package batch

import (
	"math"

	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/prep"
	"sipsum/internal/unit"
)

// Purchase is a food of the shopping list.
type Purchase struct {
	Name  string
	Food  *food.Food
	Grams float64 // as it is weighed in: its edible part

	Bought      float64 // grams with skin and stones: as it is bought
	Edible      float64 // the share of it that is weighed in; NaN: nobody states one
	Millilitres float64 // NaN if nobody states a density
	Pieces      float64 // of Piece; NaN if nobody says what one weighs
	Piece       string
	Gas         bool // it comes in charges: Pieces are charges
	Of          []Part
	Sold
}

// Part is how much of a purchase goes where.
type Part struct {
	Pot   string // "": the drink
	Grams float64
}

// shop adds up what is bought, waters and ice too, in the order in which it is first taken.
func (m *maker) shop() {
	at := map[string]int{} // by food, or by what a step brings
	add := func(pot string, f *food.Food, name string, grams float64) {
		key := f.ID.String()
		if f == m.Recipe.Water.Food {
			key = name
		}
		i, ok := at[key]
		if !ok {
			i = len(m.out.Purchases)
			at[key] = i
			m.out.Purchases = append(m.out.Purchases, Purchase{Name: name, Food: f})
		}
		p := &m.out.Purchases[i]
		p.Grams += grams
		if n := len(p.Of); n > 0 && p.Of[n-1].Pot == pot {
			p.Of[n-1].Grams += grams
		} else {
			p.Of = append(p.Of, Part{pot, grams})
		}
	}
	lines := func(pot string, list []drink.Line, times float64) {
		for _, line := range list {
			if in := m.Recipe.Lines[line.Path]; in.Component == nil {
				add(pot, in.Profile.Food, m.Recipe.Called[m.Recipe.PartOf(line)], m.grams(line)*times)
			}
		}
	}
	steps := func(pot string, list []drink.Step) {
		for _, step := range list {
			lines(pot, step.Lines(), m.times[pot])
			if f, name, grams := m.brought(pot, step); f != nil {
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
	for i := range m.out.Purchases {
		m.out.Purchases[i].bought(m.out)
	}
	m.sell()
}

// Names of what a step brings.
const (
	ice   = "Ice, what melts of it"
	water = "Water"
)

// brought is what a step brings that no line names: gas, melted ice, water.
func (m *maker) brought(pot string, step drink.Step) (f *food.Food, name string, grams float64) {
	switch s := step.(type) {
	case *drink.Carbonate:
		if s.Charge != nil {
			return prep.Gas(), prep.Gas().Name(), s.Charge.Base()
		}
	case *drink.Chill:
		return m.Recipe.Water.Food, ice, m.added(pot, step)
	case *drink.Dilute:
		return m.Recipe.Water.Food, water, m.added(pot, step)
	}
	return nil, "", 0
}

// added is what a step added to a pot.
func (m *maker) added(pot string, step drink.Step) float64 {
	for _, y := range m.yields[pot].Steps {
		if y.Path == step.StepPath() {
			return y.Added
		}
	}
	return 0
}

// bought turns what is weighed in into what is bought.
func (p *Purchase) bought(b *Batch) {
	p.Bought, p.Edible, p.Millilitres, p.Pieces = p.Grams, p.Food.Edible, math.NaN(), math.NaN()
	if food.Stated(p.Edible) && p.Edible > 0 && p.Edible < 1 {
		p.Bought = p.Grams / p.Edible
	} else {
		p.Edible = math.NaN()
	}
	if p.Food.Density.GramsPerMl > 0 && p.Food.ID != prep.Gas().ID {
		p.Millilitres = p.Grams / p.Food.Density.GramsPerMl
	}
	if p.Food.ID == prep.Gas().ID {
		p.Gas, p.Pieces = true, 0
		for _, c := range b.Charges() {
			p.Pieces += c.Count
		}
		return
	}
	for _, word := range []string{unit.OnePiece, "medium", "large"} { // a size is counted where no piece is
		for _, portion := range p.Food.Portions { // of edible grams
			if unit.IsPortion(portion.Name, word) && portion.Grams > 0 {
				p.Pieces, p.Piece = p.Grams/portion.Grams, portion.Name
				return
			}
		}
	}
}

// Charges lists the bottles of the drink and of its pots.
func (b *Batch) Charges() []Charge {
	var list []Charge
	for _, p := range b.Pots {
		list = append(list, p.Bottles...)
	}
	return append(list, b.Bottles...)
}
