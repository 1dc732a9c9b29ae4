package batch

import (
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/drink"
	"sipsum/internal/unit"
)

// marks gives the amounts of steps with the volume that stands for each: a mark on a pot, or water that
// ice has given.
func (c *cook) marks(a *assay.Assay) []asked {
	var list []asked
	d := c.now.Recipe.Drink
	for i := range d.Components {
		list = append(list, c.marksOf(d.Components[i].Name, d.Components[i].Steps, a)...)
	}
	return append(list, c.marksOf("", d.Finish, a)...)
}

func (c *cook) marksOf(pot string, steps []drink.Step, a *assay.Assay) []asked {
	var list []asked
	for _, step := range steps {
		for _, p := range Growing(step) {
			path := step.StepPath() + "/" + p.Name
			written, follows := c.now.Central.Written()[path]
			if _, gas := step.(*drink.Foam); gas || !follows || written.Measure.Kind != unit.Mass {
				continue // what a cartridge holds nobody measures
			}
			of := asked{Spooned: Spooned{Path: path, Pot: pot, Name: p.Name, Step: true, Times: c.brews(pot), Exact: p.Amount.Base() / c.brews(pot)}}
			of.Grams = of.Exact
			if of.measure, of.fit = spooned(roomOf(a, step, pot), of.Exact, true); of.fit {
				of.sd = atHome().spread[byMark]
			} else {
				of.Weigh, of.Scale = noRoom, c.weighed(of.Spooned)
			}
			list = append(list, of)
		}
	}
	return list
}

// roomOf is what a millilitre of a pot weighs after a step, or of the water that ice gives; 0: nobody
// knows.
func roomOf(a *assay.Assay, step drink.Step, pot string) float64 {
	if step.Kind() == "chill" {
		return atHome().melt
	}
	for _, y := range a.Yields {
		for _, s := range y.Steps {
			if y.Component == pot && s.Path == step.StepPath() && s.Volume > 0 {
				return s.Out / s.Volume
			}
		}
	}
	return 0
}

// garnish gives what goes on top, in pieces where a table weighs one. It is not held to anything.
func (c *cook) garnish() {
	for _, line := range c.now.Recipe.Drink.Garnish {
		in := c.now.Recipe.Lines[line.Path]
		l := Spooned{Path: line.Path, Garnish: true, Times: 1}
		switch {
		case in.Component != nil:
			l.Name, l.To = in.Component.Name, line.Amount
		case line.Portion != "":
			l.Name, l.Count, l.Of = c.now.Recipe.Called[c.now.Recipe.PartOf(line)], line.Count, in.Line.Portion
		default:
			l.Name = c.now.Recipe.Called[c.now.Recipe.PartOf(line)]
			l.Exact = line.Amount.Base() * in.Grams
			l.Grams = l.Exact
			m, ok := counted(in.Profile.Food, l.Exact, true)
			if !ok {
				m, _ = measured(in.Profile.Food, l.Exact)
			}
			l.To, l.Count, l.Of = m.to, m.count, m.of
		}
		c.Home.Lines = append(c.Home.Lines, l)
	}
}

// Moves gives the steps of a component, or of the finish of the drink, with what they bring as it is
// measured at home.
func (h *Home) Moves(pot string) []Move {
	steps := h.Recipe.Drink.Finish
	if c, ok := h.Recipe.Drink.Component(pot); ok {
		steps = c.Steps
	}
	find := func(path string) *Spooned {
		i := slices.IndexFunc(h.Lines, func(l Spooned) bool { return l.Path == path })
		if i < 0 {
			return nil
		}
		return &h.Lines[i]
	}
	var list []Move
	brews := h.brews(pot)
	for _, step := range steps {
		move := Move{Step: step}
		for _, line := range step.Lines() {
			if l := find(line.Path); l != nil {
				move.Lines = append(move.Lines, Weighed{Path: l.Path, Name: l.Name, Home: l})
			}
		}
		for _, p := range Growing(step) {
			path := step.StepPath() + "/" + p.Name
			move.Amounts = append(move.Amounts, Weighed{Path: path, Name: p.Name, Amount: times(*p.Amount, 1/brews), Rounded: times(*p.Amount, 1/brews), Grams: p.Amount.Base() / brews, Home: find(path)})
		}
		list = append(list, move)
	}
	return list
}
