package assay

import (
	"context"
	"maps"
	"slices"
	"strings"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/prep"
	"sipsum/internal/recipe"
)

// Plan is a drink with its foods found and its draws made. It can be run again with other
// amounts without looking anything up: what was drawn and found of its foods is kept, and
// so is every component in which nothing has changed. One run at a time.
type Plan struct {
	recipe *recipe.Recipe
	ens    estimate.Ensemble
	drawer *ledger.Drawer
	lab    *acidity.Laboratory
	holds  map[string][]string // by component: those in it, itself included
	kept   map[string]*made    // by component: as it was made last
	asked  amount.Amounts      // that were written and that the drink depends on
}

// Prepare makes the draws of a recipe's foods. An ensemble with a journal is for one run.
func Prepare(r *recipe.Recipe, ens estimate.Ensemble) *Plan {
	drawer := ledger.NewDrawer(ens, ledger.NewColumns(r.Profiles, makes(r.Drink)...))
	drawer.Draw(r.Profiles)
	p := &Plan{
		recipe: r, ens: ens, drawer: drawer, lab: acidity.NewLaboratory(ens, drawer, r.Water, r.Brought[prep.Gas().ID]),
		holds: map[string][]string{}, kept: map[string]*made{}, asked: amount.Amounts{},
	}
	for i := range r.Drink.Components {
		p.holding(r.Drink.Components[i].Name)
	}
	return p
}

// holding finds the components in a component, itself included.
func (p *Plan) holding(name string) []string {
	if p.holds[name] != nil {
		return p.holds[name]
	}
	p.holds[name] = []string{name}
	for _, path := range slices.Sorted(maps.Keys(p.recipe.Lines)) {
		if in := p.recipe.Lines[path]; in.Component != nil && drink.Owner(path) == name {
			p.holds[name] = append(p.holds[name], p.holding(in.Component.Name)...)
		}
	}
	return p.holds[name]
}

// within gives those of some amounts that are in a component.
func (p *Plan) within(component string, other amount.Amounts) amount.Amounts {
	in := amount.Amounts{}
	for path, amount := range other {
		if slices.Contains(p.holds[component], drink.Owner(path)) {
			in[path] = amount
		}
	}
	return in
}

// keptOf gives a component as it was made last, if it was with the same amounts.
func (p *Plan) keptOf(component string, other amount.Amounts) *made {
	if m := p.kept[component]; m != nil && maps.Equal(m.other, p.within(component, other)) {
		return m
	}
	return nil
}

// Written gives the amounts that a run has asked for, as they are written: those that
// another run may have otherwise.
func (p *Plan) Written() amount.Amounts { return maps.Clone(p.asked) }

// apply reports whether amounts stand where the drink has amounts of their kind.
func (p *Plan) apply(other amount.Amounts) error {
	for _, path := range slices.Sorted(maps.Keys(other)) {
		switch written, ok := p.asked[path]; {
		case !ok:
			return fail.New(fail.Wrong, "the drink has no amount at "+note.Quote(path), "there are: "+strings.Join(slices.Sorted(maps.Keys(p.asked)), ", "))
		case written.Measure.Kind != other[path].Measure.Kind:
			return fail.New(fail.Wrong, "the amount at "+note.Quote(path)+" is "+written.String()+", which "+other[path].String()+" cannot replace", "give it in "+written.Measure.Name)
		}
	}
	return nil
}

// Run calculates the drink with some amounts other than those written (nil: none), as far
// as it is wanted. It is the same, bit for bit, as the run of a fresh plan.
func (p *Plan) Run(ctx context.Context, other amount.Amounts, want Want) (*Assay, error) {
	w := &walk{
		ctx: ctx, plan: p, names: p.recipe, ens: p.ens, other: other,
		amounts: amount.Hand{Ens: p.ens, Scale: p.recipe.Drink.Scale, Other: other, Asked: p.asked}, making: &made{},
	}
	served, liquid, err := w.serve()
	if err != nil {
		return nil, err
	}
	if err := p.apply(other); err != nil {
		return nil, err
	}
	for _, m := range w.made {
		p.kept[m.name] = m
	}
	w.making.pot = liquid
	list := append(w.made, w.making)
	a := &Assay{
		Drink: p.recipe.Drink, Want: want, Ensemble: Ensemble{p.ens.Seed, p.ens.N - 1},
		Serving: served, Items: p.recipe.Items, Garnish: p.recipe.Garnish(), recipe: p.recipe,
	}
	a.Notes, a.Readings = said(list)
	a.Yields = yields(list)
	a.measure(p, list)
	a.dissolve(p, list)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	a.ask(p, list)
	a.noteFoods(p.recipe)
	a.noteUnknowns()
	return a, nil
}
