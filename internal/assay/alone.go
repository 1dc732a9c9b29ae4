package assay

import (
	"slices"

	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/reading"
	"sipsum/internal/recipe"
)

// served gives the share of what was made of a component that goes into a serving, in
// the drink itself and by way of other components.
func (a *Assay) served(name string, list []*made) []float64 {
	sum := make([]float64, a.Serving.N)
	for _, m := range list {
		for _, u := range m.uses {
			if u.of != name {
				continue
			}
			of := estimate.Constant(a.Serving.N, 1/float64(a.Drink.Serves))
			if m.name != "" {
				of = a.served(m.name, list)
			}
			for d, x := range of {
				sum[d] += x * u.share[d]
			}
		}
	}
	return sum
}

// setAlone finds what compare-with names.
func (a *Assay) setAlone(p *Plan, list []*made, ids []*constituent.Constituent) {
	for i, name := range a.Drink.Compared() {
		c := a.alone(p, list, ids, recipe.PartID{Component: name})
		if i == 0 {
			a.Alone = c
		} else if c != nil {
			a.Also = append(a.Also, c)
		}
	}
}

// alone is a component by itself: the part that the build pours of it, or, if it is only used inside
// other components, as much of it as they take for a serving, as it was made and before what is done
// to them. So it is too where a reading of the drink contradicts its recipe: what that says of the
// drink it does not say of the component. Nil if nothing was made of it.
func (a *Assay) alone(p *Plan, list []*made, ids []*constituent.Constituent, id recipe.PartID) *Component {
	for i := range a.Components {
		if a.Components[i].ID == id && !a.ReadAgainst() {
			return &a.Components[i]
		}
	}
	m := named(list, id.Component)
	if m == nil {
		return nil
	}
	pot := p.drawer.NewPot()
	pot.Mix(m.pot, a.served(id.Component, list), id.Component)
	alone := componentOf(&composition.Meter{Brief: !a.Want.Intervals}, id, a.recipe.Called[id], pot, composition.TotalsOf(pot, ids), ids)
	if a.Want.Chemistry && a.ReadAgainst() {
		house, _ := a.Drink.Component(id.Component)
		alone.Chemistry = m.chemistry(p.lab, chemistry.Liquid{Celsius: a.celsius(), House: true, Keeps: house.Keeps})
	}
	return &alone
}

// ReadAgainst reports whether a reading of the drink itself contradicts its recipe.
func (a *Assay) ReadAgainst() bool {
	return slices.ContainsFunc(a.Readings, func(r reading.Reading) bool { return len(r.Path) == 0 && (r.Doubted || r.Decide) })
}

// componentOf reads what a part brings off its pot.
func componentOf(m *composition.Meter, id recipe.PartID, name string, pot *ledger.Pot, own composition.Totals, ids []*constituent.Constituent) Component {
	return Component{
		ID: id, Name: name, House: id.Component != "", Mass: composition.Known(m.Of(pot.Mass()), "g"),
		Constituents: m.Composition(pot, ids, own, estimate.Constant(pot.N, 1), 1),
	}
}
