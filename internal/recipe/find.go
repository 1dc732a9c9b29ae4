package recipe

import (
	"context"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/prep"
)

// Ingredient is a line with its food found.
type Ingredient struct {
	Line      drink.Line
	Component *drink.Component // set if the line names one
	Profile   *food.Profile    // set if the line names a food
	Grams     float64          // one base unit of the amount in grams (density, portion), central
	GramsSD   float64
}

// Recipe is a drink with every name looked up.
type Recipe struct {
	Drink    *drink.Drink
	Lines    map[string]Ingredient // by Line.Path
	Profiles []*food.Profile       // in order of appearance
	Water    *food.Profile         // of melted ice and dilution
	Items    []Item
	Called   Names
	Unused   []string // components of the drink file, not of its pantries, that nothing pours

	Brought map[food.ID]*food.Profile // what steps pour and nobody names
	Rows    map[string]*food.Food     // every row of a table that was looked up, as published, by the text that found it
}

// resolver looks names up and collects what is wrong with them.
type resolver struct {
	ctx        context.Context
	drink      *drink.Drink
	foods      Foods
	faults     *fail.List
	stop       error  // an error that is not the file's fault
	needs      []need // tables that are not loaded
	own        map[string]*food.Food
	undense    map[string]bool         // own foods that need a density and were told so
	ownNotes   map[food.ID][]food.Note // how the figures of a pack were read, what the facts of a coffee change
	coffeeSaid map[food.ID]bool
	found      map[string]*food.Food
	profiles   map[[2]food.ID]*food.Profile
	used       map[string]bool
	aside      bool // a component that the drink does not use is looked up: nothing of it is in the drink
	out        *Recipe
}

// Find finds every food that the drink uses and reports all that is wrong at
// once, together with the faults of reading.
func Find(ctx context.Context, d *drink.Drink, faults *fail.List, foods Foods) (*Recipe, error) {
	r := &resolver{
		ctx: ctx, drink: d, foods: foods, faults: faults,
		own: map[string]*food.Food{}, undense: map[string]bool{}, ownNotes: map[food.ID][]food.Note{}, coffeeSaid: map[food.ID]bool{}, found: map[string]*food.Food{}, profiles: map[[2]food.ID]*food.Profile{}, used: map[string]bool{},
		out: &Recipe{Drink: d, Lines: map[string]Ingredient{}, Brought: map[food.ID]*food.Profile{}, Rows: map[string]*food.Food{}},
	}
	for i := range d.Foods {
		r.ownFood(&d.Foods[i])
	}
	r.refuseNotComputed()
	for _, line := range d.Build {
		r.line(line, nil, true)
	}
	for _, step := range d.Finish {
		r.step(step, nil, true)
	}
	for _, line := range d.Garnish {
		r.line(line, nil, line.Eaten)
	}
	r.unused()
	r.aside = true
	poured := len(r.out.Profiles)
	for i := range d.Components {
		if c := &d.Components[i]; !r.used[c.Name] {
			r.component(c, nil, false) // checked all the same
		}
	}
	r.out.Profiles = r.out.Profiles[:poured] // a pantry's foods need no draws
	for _, m := range d.Mentions {
		if _, ok := d.Component(m.Food); !ok {
			r.lookup(m.Food, m.At) // of lines at fault; the others have been
		}
	}
	if r.stop != nil {
		return nil, r.stop
	}
	if err := faults.Err(r.missing()); err != nil {
		return nil, err
	}
	r.out.Water = r.bring(prep.PureWater())
	r.out.Called = called(d, r.poured())
	return r.out, nil
}

// unused lists the drink's own components that nothing pours; a shelf that is shared may hold more
// than one drink needs.
func (r *resolver) unused() {
	for _, c := range r.drink.Components {
		if !r.used[c.Name] && c.Place.File == r.drink.File {
			r.out.Unused = append(r.out.Unused, c.Name)
		}
	}
}

// poured lists the foods of every profile, in order of appearance.
func (r *resolver) poured() []*food.Food {
	foods := make([]*food.Food, len(r.out.Profiles))
	for i, p := range r.out.Profiles {
		foods[i] = p.Food
	}
	return foods
}

// line looks up what a line names. eaten tells whether the line is part of what
// is drunk; a food that is not counts only for the allergens.
func (r *resolver) line(line drink.Line, path []string, eaten bool) {
	in := Ingredient{Line: line}
	if c, ok := r.drink.Component(line.Food); ok {
		if len(path) > len(r.drink.Components) {
			return // a cycle: the parser has reported it
		}
		in.Component = c
		r.out.Lines[line.Path] = in
		r.component(c, append(path[:len(path):len(path)], c.Name), eaten)
		return
	}
	f := r.lookup(line.Food, line.FoodAt)
	if f == nil || !r.possible(f, line.FoodAt) {
		return
	}
	var lender *food.Food
	if line.Fill != "" {
		lender = r.lookup(line.Fill, line.FoodAt)
	} else if own, ok := r.ownEntry(f); ok && own.Fill != "" {
		lender = r.lookup(own.Fill, own.FillAt)
	}
	if lender != nil && !r.possible(lender, line.FoodAt) {
		return
	}
	if own, ok := r.ownEntry(f); ok && own.Coffee != nil {
		lender = r.coffeeLender(own, f, lender)
	}
	in.Profile = r.profile(f, lender)
	r.weigh(&in, f)
	r.out.Lines[line.Path] = in
	r.item(f, lender, path, eaten)
}

func (r *resolver) component(c *drink.Component, path []string, eaten bool) {
	r.used[c.Name] = true
	for _, line := range c.Ingredients {
		r.line(line, path, eaten)
	}
	for _, step := range c.Steps {
		r.step(step, path, eaten)
	}
}

func (r *resolver) step(step drink.Step, path []string, eaten bool) {
	r.faults.Join(step.At(), prep.Ahead(step))
	if does := prep.MethodOf(step); does != nil && does.Brings() != nil {
		r.bring(does.Brings())
	}
	for _, line := range step.Lines() { // what is taken out again has still been in the drink
		r.line(line, path, eaten)
	}
}

// bring enters a food that nobody names.
func (r *resolver) bring(f *food.Food) *food.Profile {
	p := r.profile(f, nil)
	r.out.Brought[f.ID] = p
	return p
}

// profile enters a food once for each lender.
func (r *resolver) profile(f, lender *food.Food) *food.Profile {
	key := [2]food.ID{f.ID}
	if lender != nil {
		key[1] = lender.ID
	}
	p, ok := r.profiles[key]
	if !ok {
		p = food.Enter(f, lender)
		p.Notes = append(p.Notes, r.ownNotes[f.ID]...)
		r.profiles[key] = p
		r.out.Profiles = append(r.out.Profiles, p)
	}
	return p
}

// item notes where in the drink a food stands; what the drink does not use is not in it.
func (r *resolver) item(f, lender *food.Food, path []string, eaten bool) {
	if r.aside {
		return
	}
	own, isOwn := r.ownEntry(f)
	r.out.Items = append(r.out.Items, Item{Food: f, Path: path, Eaten: eaten, Own: isOwn, Stated: isOwn && own.Assessed, Lender: lender})
}
