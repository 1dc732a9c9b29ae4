package batch

import (
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/drink"
)

// Days is when a pot may be made.
type Days struct {
	Keeps  *drink.Keeps // as the file says; nil: it does not
	UseUp  float64      // days in which it is used up, the day it is made counted; 0: nobody says, or hours
	Cut    bool         // a code allows fewer days than the file says
	Ahead  float64      // days before the service on which it may be made at the earliest; 0: on the day
	Glass  bool         // it is made for each glass as it is built
	Before []string     // pots made of it, where the glass takes nothing of it: then UseUp counts until these
	Oldest string       // what is mixed into it and keeps less: it keeps no longer; "": nothing does
}

// days tells how long before the service each pot may be made: as long as it keeps, or before those
// that are made of it, as long as these keep. What is only mixed keeps no longer than its oldest part,
// whose days are counted to the service. What nobody says of how long it keeps is made on the day.
func (m *maker) days() {
	pots := m.out.Pots
	for i := range pots { // those that hold others stand behind them
		m.keeps(&pots[i], pots[:i])
	}
	for i := len(pots) - 1; i >= 0; i-- {
		p := &pots[i]
		drunk, _ := m.taken(p.Name)
		p.Glass = (p.Whole != nil || p.Shot != nil) && drunk > 0 && p.Keeps == nil
		latest := math.Inf(1)
		if drunk > 0 {
			latest = 0
		}
		for _, outer := range pots[i+1:] {
			switch {
			case !m.holds(outer.Name, p.Name):
			case p.Keeps != nil && m.mixed(outer.Name):
				latest = 0
			default:
				latest = min(latest, outer.Ahead)
				if drunk == 0 {
					p.Before = append(p.Before, outer.Name)
				}
			}
		}
		if latest == 0 && p.Keeps != nil {
			p.Before = nil
		}
		p.Ahead = max(p.UseUp-1, 0) // the day it is made is one of them
		if !math.IsInf(latest, 1) {
			p.Ahead += latest
		}
	}
}

// keeps says how long a pot keeps, by its file, a code, and what is mixed into it.
func (m *maker) keeps(p *Pot, inner []Pot) {
	c, _ := m.Recipe.Drink.Component(p.Name)
	p.Keeps, p.UseUp = c.Keeps, m.usedUp(c)
	p.Cut = p.UseUp > 0 && p.UseUp < math.Floor(c.Keeps.Days)
	for _, in := range inner {
		if m.holds(p.Name, in.Name) && m.mixed(p.Name) && in.UseUp > 0 && in.UseUp < p.UseUp {
			p.UseUp, p.Oldest = in.UseUp, in.Name
		}
	}
}

// mixed reports whether a pot is no more than mixed: no step makes another food of it.
func (m *maker) mixed(name string) bool {
	c, _ := m.Recipe.Drink.Component(name)
	return !slices.ContainsFunc(c.Steps, func(s drink.Step) bool { return limits().anew[s.Kind()] })
}

// usedUp gives the days in which a component is used up: as its file says, and no longer than a code
// allows. Of less than a day nobody counts days.
func (m *maker) usedUp(c *drink.Component) float64 {
	if c.Keeps == nil || c.Keeps.Days < 1 {
		return 0
	}
	days := math.Floor(c.Keeps.Days)
	if allowed := m.Allowed[c.Name]; allowed > 0 {
		days = min(days, allowed)
	}
	return days
}

// holds reports whether a pot is made of another.
func (m *maker) holds(outer, name string) bool {
	return slices.ContainsFunc(m.yields[outer].Poured, func(p assay.Poured) bool {
		in := m.Recipe.Lines[p.Path]
		return in.Component != nil && in.Component.Name == name
	})
}
