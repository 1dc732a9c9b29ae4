package assay

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
)

// Want is what is asked of a run.
type Want struct {
	Figures []constituent.ID // reported even if nobody knows them, with their parts

	// Whole asks for every figure of every component, for intervals per 100 g and 100 ml
	// and for the share of every contribution. Without it components and shares are given
	// for Figures and energy only: all that a page prints.
	Whole bool

	Chemistry bool // pH and acidity of the drink and its components, where milk curdles, how components keep

	Why  constituent.ID // ask what drives this figure; empty: nobody asks
	Next bool           // ask which reading to take next

	Degassed bool // ask for the pH when the gas has left
}

// Assay is a drink calculated.
type Assay struct {
	Drink *drink.Drink
	Want
	Seed       uint64
	Draws      int
	Serving    *ledger.Pot // one serving, what is eaten
	Mass       Result      // g a serving
	Volume     Result      // ml a serving
	Density    Result      // g/ml
	PerServing Composition
	Per100g    Composition // only if Whole
	Per100ml   Composition // without intervals unless Whole
	Components []Component
	Alone      *Component // what compare-with names; nil if it names nothing
	Chemistry  *Chemistry
	Curdling   *Verdict // nil if nothing in the drink may curdle, or nothing sours it
	// TableEnergy is in kJ and in kcal.
	TableEnergy [2]TableEnergy
	Drivers     *Drivers     // of Why; nil if not asked, or if the drink has none of it
	Suggestions []Suggestion // of Next
	Readings    []Reading    // what was read, in the order in which the pots were made
	Items       []Item       // every food in the drink, garnish included
	Garnish     []Garnish
	Notes       []Note

	names names
}

// Component is the part of a serving that came of one component or food of the build.
type Component struct {
	ID           PartID
	Name         string // by which readers tell it from the others (see called)
	House        bool   // made by the drink file, not poured directly
	Mass         Result
	Constituents Composition
	Chemistry    *Chemistry // of what the component is in its jar; nil unless House
}

// dissolve works the serving, without its garnish, and its house-made components out as
// solutions.
func (a *Assay) dissolve(p *Plan, list []*made) {
	if !a.Want.Chemistry {
		return
	}
	celsius := MeterCelsius
	if a.Drink.At != nil {
		celsius = a.Drink.At.Number
	}
	drink := list[len(list)-1]
	a.Chemistry = drink.chemistry(p.lab, celsius)
	if a.Degassed && a.Chemistry.CO2.Mean > 0 {
		a.Chemistry.degas(p.lab, drink.pot)
	}
	a.Curdling = Judge(p.lab, a.pour(celsius))
	for i, c := range a.Components {
		if c.House {
			house, _ := a.Drink.Component(c.ID.Component)
			m := list[slices.IndexFunc(list, func(m *made) bool { return m.name == house.Name })]
			solved := m.chemistry(p.lab, celsius)
			solved.Keeping = keepingOf(solved, m.pot, house.Keeps, m.read[readPH])
			a.Components[i].Chemistry = solved
		}
	}
}

// pour is the serving as it is poured together.
func (a *Assay) pour(celsius float64) Pour {
	p := Pour{Mass: a.Serving.Central(constituent.Mass), Celsius: celsius, Assumed: a.Drink.At == nil, Curdled: a.curdled}
	for _, id := range a.parts() {
		p.Parts = append(p.Parts, PourPart{Name: a.names[id], House: id.Component != "", Pot: a.only(id)})
	}
	return p
}

// curdled reports whether a component that a row came through was curdled.
func (a *Assay) curdled(r ledger.Row) bool {
	for i := range a.Drink.Components {
		c := &a.Drink.Components[i]
		isCurdle := func(s drink.Step) bool { _, ok := s.(*drink.Curdle); return ok }
		if slices.Contains(r.Path, c.Name) && slices.ContainsFunc(c.Steps, isCurdle) {
			return true
		}
	}
	return false
}

// ask answers the questions of a run that keeps its inputs.
func (a *Assay) ask(p *Plan, list []*made) {
	if f, ok := a.PerServing.Find(a.Why); ok {
		a.Drivers = driversOf(f, a.Serving, p.ens.Journal.Entries())
	}
	if !a.Next {
		return
	}
	var samples []sample
	for _, m := range list {
		samples = append(samples, m.samples...)
	}
	a.Suggestions = next(newBench(p.lab, hand{ens: p.ens, scale: a.Drink.Scale}, nil), samples, a.Figures, a.Serving)
}
