package batch

import (
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/drink"
	"sipsum/internal/unit"
)

// Pot is a component as it is made for a batch.
type Pot struct {
	Name    string
	Times   float64 // how often its recipe is made in all
	Whole   *Whole  // it is made again and again as it is written; nil: in one pot
	Lines   []Weighed
	Moves   []Move  // its steps, and what was read at the end
	In, Out float64 // grams of all that is made
	Needed  float64 // grams of it that are used
	Bottles []Charge
	Shot    *Shot // it is pulled with each glass; nil: it is made
	Days
	Note string
}

// Left is how much of a pot is left over.
func (p Pot) Left() float64 { return max(p.Out-p.Needed, 0) }

// Whole says why something is made only as a whole, and for how many glasses one is.
type Whole struct {
	Of      string  // "brew" or "bottle"
	Kept    bool    // it keeps: what is left of one goes into the next glass
	Glasses float64 // that one serves, if it does not keep; 0: it goes into other pots
}

// Shot says how often a coffee is pulled: data/batch.csv says what one weighs.
type Shot struct {
	Grams   float64
	Count   float64
	Glasses float64 // that one fills; 0: it goes into other pots
}

// shot is what a component is pulled as; nil if it is made of more than a coffee, or kept.
func (m *maker) shot(c *drink.Component, drunk, inner float64) *Shot {
	if len(c.Ingredients) != 1 || len(c.Steps) > 0 || c.Keeps != nil {
		return nil
	}
	in := m.Recipe.Lines[c.Ingredients[0].Path]
	if in.Component != nil || limits().shots[in.Profile.Food.ID.String()] == 0 {
		return nil
	}
	var w Whole
	s := &Shot{Grams: limits().shots[in.Profile.Food.ID.String()]}
	s.Count = m.brews(s.Grams, drunk, &w) + wholly(inner/s.Grams)
	s.Glasses = w.Glasses
	return s
}

// component scales a component to what is taken of it, or to as many whole ones as that wants. Never
// is less made than its recipe makes: a smaller pot boils and strains otherwise.
func (m *maker) component(y assay.Yield) {
	c, _ := m.Recipe.Drink.Component(y.Component)
	p := Pot{Name: c.Name, Note: c.Note, Bottles: charges(c.Name, c.Steps, 0)}
	drunk, inner := m.taken(c.Name)
	p.Needed = drunk + inner
	what, large, least := "", m.ask.Pot > 0 && y.Out > twice*m.ask.Pot && len(p.Bottles) == 0, 1.0
	if large { // a home has no such pot
		least = m.ask.Pot / y.Out
	}
	switch {
	case large:
	case slices.ContainsFunc(c.Steps, func(s drink.Step) bool { return s.Kind() == "brew" }):
		what = "brew"
	case len(p.Bottles) > 0:
		what = "bottle"
	}
	each := 1.0 // of the recipe in one weighing
	if what != "" {
		p.Whole = &Whole{Of: what}
		if p.Whole.Kept = c.Keeps != nil; p.Whole.Kept {
			p.Times = wholly(p.Needed / y.Out)
		} else {
			p.Times = m.brews(y.Out, drunk, p.Whole) + wholly(inner/y.Out)
		}
	} else {
		p.Times = max(least, (p.Needed+m.spare[c.Name])/y.Out)
		if p.Shot = m.shot(c, drunk, inner); p.Shot != nil {
			p.Times = p.Needed / y.Out
		}
		each = p.Times
	}
	for i := range p.Bottles {
		p.Bottles[i].Count, p.Bottles[i].Glasses = p.Times, p.Whole.Glasses
	}
	p.In, p.Out = y.In*p.Times, y.Out*p.Times
	m.times[c.Name] = p.Times
	more := p.Times / each
	for _, line := range c.Ingredients {
		w := m.weighed(line, each, more)
		w.pulled = p.Shot != nil
		p.Lines = append(p.Lines, w)
	}
	for _, step := range c.Steps {
		p.Moves = append(p.Moves, m.move(step, each, more))
	}
	if c.Measured != nil {
		p.Moves = append(p.Moves, m.move(c.Measured, each, more))
	}
	m.out.Pots = slices.Insert(m.out.Pots, 0, p)
}

// twice as much as a home's pot has to be before a recipe is made smaller.
const twice = 2

// taken tells how many grams of a component the glasses take, and how many other pots.
func (m *maker) taken(name string) (drunk, inner float64) {
	for _, y := range m.walked { // in their order, so that sums come out the same
		for _, p := range y.Poured {
			in := m.Recipe.Lines[p.Path]
			switch {
			case in.Component == nil || in.Component.Name != name:
			case y.Component == "":
				drunk += p.Grams * m.times[""]
			default:
				inner += p.Grams * m.times[y.Component]
			}
		}
	}
	return drunk, inner
}

// brews tells how many brews or bottles the glasses want: what is left of one when its glasses are
// poured does not wait for the next guest.
func (m *maker) brews(makes, drunk float64, w *Whole) float64 {
	if drunk == 0 {
		return 0
	}
	serves := m.times[""] * float64(m.Recipe.Drink.Serves)
	glass := drunk / serves
	if makes >= glass*(1-unit.Closeness) {
		w.Glasses = math.Floor(makes/glass + unit.Closeness)
		return wholly(serves / w.Glasses)
	}
	w.Glasses = 1 / wholly(glass/makes)
	return wholly(serves) * wholly(glass/makes)
}
