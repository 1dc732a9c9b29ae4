package assay

import (
	"context"
	"maps"
	"slices"
	"strings"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/meter"
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
	holds  map[string]map[string]bool // by component: those in it, itself included
	kept   map[string]*made           // by component: as it was made last
	asked  amount.Amounts             // that were written and that the drink depends on

	heard   amount.Written
	streams amount.Streams
	found   []meter.Found // of the instruments, in the last run
}

// Hear lets a plan tell what is written in its drink, amounts and quantities, by path: runs add
// to it what they ask for.
func (p *Plan) Hear(all amount.Written) { p.heard = all }

// Follow lets amounts have streams other than those of their paths.
func (p *Plan) Follow(streams amount.Streams) { p.streams = streams }

// Prepare makes the draws of a recipe's foods. An ensemble with a journal is for one run.
func Prepare(r *recipe.Recipe, ens estimate.Ensemble) *Plan {
	may := append(makes(r.Drink), constituent.AddedSugar) // of concentrated juice
	drawer := ledger.NewDrawer(ens, ledger.NewColumns(r.Profiles, may...))
	drawer.Draw(r.Profiles)
	return &Plan{
		recipe: r, ens: ens, drawer: drawer, lab: acidity.NewLaboratory(ens, drawer, r.Water, r.Brought[prep.Gas().ID]),
		holds: holdsOf(r), kept: map[string]*made{}, asked: amount.Amounts{},
	}
}

// holdsOf tells, by component, which components are in it, itself included.
func holdsOf(r *recipe.Recipe) map[string]map[string]bool {
	direct, holds := map[string][]string{}, map[string]map[string]bool{}
	for path, in := range r.Lines {
		if in.Component != nil {
			direct[drink.Owner(path)] = append(direct[drink.Owner(path)], in.Component.Name)
		}
	}
	var add func(to map[string]bool, name string)
	add = func(to map[string]bool, name string) {
		if to[name] {
			return
		}
		to[name] = true
		for _, inner := range direct[name] {
			add(to, inner)
		}
	}
	for i := range r.Drink.Components {
		name := r.Drink.Components[i].Name
		holds[name] = map[string]bool{}
		add(holds[name], name)
	}
	return holds
}

// within gives those of some amounts that are in a component.
func (p *Plan) within(component string, other amount.Amounts) amount.Amounts {
	in := amount.Amounts{}
	for path, amount := range other {
		if p.holds[component][drink.Owner(path)] {
			in[path] = amount
		}
	}
	return in
}

// keptOf gives a component as it was made last, if it was with the same amounts, and tells all
// that is asked for.
func (w *walk) keptOf(component string) *made {
	m := w.plan.kept[component]
	if m == nil || w.samples && m.samples == nil || w.volumes && !m.volumes || w.sour && !m.sour {
		return nil
	}
	if !maps.Equal(m.other, w.plan.within(component, w.amounts.Other)) {
		return nil
	}
	return m
}

// Written gives the amounts that a run has asked for, as they are written: those that
// another run may have otherwise.
func (p *Plan) Written() amount.Amounts { return maps.Clone(p.asked) }

// fits reports whether amounts stand where the drink has amounts of their kind.
func (p *Plan) fits(other amount.Amounts) error {
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
		ctx: ctx, plan: p, samples: want.Next, volumes: want.Volumes, sour: want.Chemistry,
		amounts: amount.Hand{Ens: p.ens, Scale: p.recipe.Drink.Scale, Other: other, Asked: p.asked, Heard: p.heard, Streams: p.streams}, making: &made{},
	}
	p.findMeters(w)
	served, liquid, err := w.serve()
	if err != nil {
		return nil, err
	}
	if err := p.fits(other); err != nil {
		return nil, err
	}
	for _, m := range w.made {
		p.kept[m.name] = m
	}
	w.making.pot = liquid
	list := append(w.made, w.making)
	a := &Assay{
		Drink: p.recipe.Drink, Want: want, Ensemble: Ensemble{p.ens.Seed, p.ens.N - 1, p.ens.Only},
		Serving: served, Items: p.recipe.Items, Garnish: p.recipe.Garnish(), recipe: p.recipe,
	}
	a.Notes, a.Readings, a.Told = said(list)
	a.Meters = w.meters.Found()
	a.Notes = slices.Concat(a.Notes, loggedNotes(a.Drink), w.meters.Notes())
	a.Yields, a.Doses = yields(list), dosesOf(list, a.Drink.Serves)
	a.noteBatches(list)
	a.measure(p, list)
	a.dissolve(p, list)
	a.foamed(p, list)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	a.ask(p, list)
	a.noteFoods()
	a.noteUnknowns()
	return a, nil
}
