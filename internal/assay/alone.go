package assay

import (
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// use is one use of a component: the share of what was made of it that went into another
// component, or into the drink.
type use struct {
	in    string // component; empty: the drink
	share []float64
}

// served gives the share of what was made of a component that goes into a serving, in
// the drink itself and by way of other components.
func (w *walk) served(name string) []float64 {
	sum := make([]float64, w.amounts.n)
	for _, u := range w.uses[name] {
		of := constantColumn(w.amounts.n, 1/float64(w.drink.Serves))
		if u.in != "" {
			of = w.served(u.in)
		}
		for d, x := range of {
			sum[d] += x * u.share[d]
		}
	}
	return sum
}

// setAlone finds what compare-with names: the part that the build pours of it, or, if it
// is only used inside other components, as much of it as they take for a serving, as it
// was made and before what is done to them.
func (a *Assay) setAlone(w *walk, ids []*constituent.Constituent) {
	id := PartID{Component: a.Drink.CompareWith}
	if id.Component == "" {
		return
	}
	for i := range a.Components {
		if a.Components[i].ID == id {
			a.Alone = &a.Components[i]
			return
		}
	}
	made, ok := w.made[id.Component]
	if !ok {
		return
	}
	pot := ledger.New(w.columns, w.amounts.n)
	pot.Mix(made, w.served(id.Component), id.Component)
	alone := componentOf(&meter{}, id, a.names[id], pot, totalsOf(pot, ids), ids)
	a.Alone = &alone
}

// componentOf reads what a part brings off its pot.
func componentOf(m *meter, id PartID, name string, pot *ledger.Pot, own totals, ids []*constituent.Constituent) Component {
	return Component{
		ID: id, Name: name, House: id.Component != "", Mass: known(m.Of(pot.Mass()), "g"),
		Constituents: m.composition(pot, ids, own, constantColumn(pot.N, 1), 1),
	}
}
