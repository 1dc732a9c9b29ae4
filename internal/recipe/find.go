package recipe

import (
	"context"
	"errors"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/prep"
	"sipsum/internal/unit"
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

	Brought map[food.ID]*food.Profile // what steps pour and nobody names
}

// resolver looks names up and collects what is wrong with them.
type resolver struct {
	ctx      context.Context
	drink    *drink.Drink
	foods    Foods
	faults   *fail.List
	stop     error // an error that is not the file's fault
	own      map[string]*food.Food
	found    map[string]*food.Food
	profiles map[[2]food.ID]*food.Profile
	used     map[string]bool
	aside    bool // a component that the drink does not use is looked up: nothing of it is in the drink
	out      *Recipe
}

// Find finds every food that the drink uses and reports all that is wrong at
// once, together with the faults of reading.
func Find(ctx context.Context, d *drink.Drink, faults *fail.List, foods Foods) (*Recipe, error) {
	r := &resolver{
		ctx: ctx, drink: d, foods: foods, faults: faults,
		own: map[string]*food.Food{}, found: map[string]*food.Food{}, profiles: map[[2]food.ID]*food.Profile{}, used: map[string]bool{},
		out: &Recipe{Drink: d, Lines: map[string]Ingredient{}, Brought: map[food.ID]*food.Profile{}},
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
	r.aside = true
	poured := len(r.out.Profiles)
	for i := range d.Components {
		if c := &d.Components[i]; !r.used[c.Name] {
			r.component(c, nil, false) // checked all the same
		}
	}
	r.out.Profiles = r.out.Profiles[:poured] // a pantry's foods need no draws
	if r.stop != nil {
		return nil, r.stop
	}
	if err := faults.Err(fail.Wrong); err != nil {
		return nil, err
	}
	r.out.Water = r.bring(prep.PureWater())
	r.out.Called = called(d, r.poured())
	return r.out, nil
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
	in.Profile = r.profile(f, lender)
	r.weigh(&in, f)
	r.out.Lines[line.Path] = in
	r.item(f, path, eaten)
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

// lookup finds a food by the text of a line.
func (r *resolver) lookup(text string, at fail.Place) *food.Food {
	if f, ok := r.found[text]; ok {
		return f
	}
	f, err := r.find(text)
	switch {
	case err == nil:
	case fail.ExitCode(err) == fail.Wrong:
		var e *fail.Error
		errors.As(err, &e)
		r.faults.Join(at, e)
	default:
		r.stop = err
	}
	r.found[text] = f // nil too: one fault a text is enough
	return f
}

func (r *resolver) find(text string) (*food.Food, error) {
	table, code, coded := strings.Cut(text, ":")
	if coded && table == food.Own {
		if f, ok := r.own[code]; ok {
			return f, nil
		}
		return nil, fail.New(fail.Wrong, "no own food "+note.Quote(code)+" under foods:", r.suggest(text))
	}
	if !coded {
		if f, err := r.ownNamed(text); f != nil || err != nil {
			return f, err
		}
		id, ok, err := r.foods.Named(r.ctx, text)
		if err != nil {
			return nil, err
		}
		if !ok {
			if _, own := r.own[text]; own {
				return nil, fail.New(fail.Wrong, "no component and no food is called "+note.Quote(text), "write own:"+text+" for the food under foods:")
			}
			return nil, fail.New(fail.Wrong, "no component and no food is called "+note.Quote(text), r.suggest(text))
		}
		return r.foods.Food(r.ctx, id)
	}
	return r.foods.Food(r.ctx, food.ID{Table: table, Code: code})
}

// ownNamed gives the own food that is called so; nil if none is. Of two that share the
// name nobody can tell which is meant.
func (r *resolver) ownNamed(name string) (*food.Food, error) {
	var found []string
	for _, o := range r.drink.Foods { // in the order of the file
		if o.Name == name && r.own[o.Code] != nil {
			found = append(found, food.Own+":"+o.Code)
		}
	}
	switch len(found) {
	case 0:
		return nil, nil
	case 1:
		return r.own[strings.TrimPrefix(found[0], food.Own+":")], nil
	}
	return nil, fail.New(fail.Wrong, note.Quote(name)+" is the name of more than one own food", "write the one you mean: "+strings.Join(found, " or "))
}

func (r *resolver) suggest(text string) string {
	near := r.foods.Near(r.ctx, text)
	if len(near) == 0 {
		return "search with: sipsum food find WORDS"
	}
	return "near: " + strings.Join(near, ", ")
}

// possible reports a food of a table that prints what no food can have: of such a row
// nothing can be believed. Own foods have been checked value by value.
func (r *resolver) possible(f *food.Food, at fail.Place) bool {
	if f.ID.Table == food.Own {
		return true
	}
	for _, v := range f.Values {
		if what := food.Impossible(v, unit.LimitOf("rounding of a label", "share").High); what != "" {
			r.faults.Add(at, "take another row, or describe the food under foods: by its label", "%s has %s, as its table prints it, and that cannot be", f.ID, what)
			return false
		}
	}
	return true
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
		r.profiles[key] = p
		r.out.Profiles = append(r.out.Profiles, p)
	}
	return p
}

// weigh finds how a line's amount becomes grams.
func (r *resolver) weigh(in *Ingredient, f *food.Food) {
	in.Grams = 1
	switch {
	case in.Line.Portion != "":
		r.portion(in, f)
	case in.Line.Amount.Measure.Kind == unit.Volume:
		if !food.Stated(f.Density.GramsPerMl) {
			r.faults.Add(in.Line.Place, "write grams, or give an own food with density:", "%s is a volume, but %s has no density", in.Line.Amount.Measure.Name, f.ID)
			return
		}
		in.Grams, in.GramsSD = f.Density.GramsPerMl, f.Density.SD
	}
	if in.Line.As == "whole" {
		if !food.Stated(f.Edible) {
			r.faults.Add(in.Line.Place, "weigh the edible part and write as: edible", "%s has no edible share", f.ID)
			return
		}
		in.Grams, in.GramsSD = in.Grams*f.Edible, in.GramsSD*f.Edible
	}
}

func (r *resolver) portion(in *Ingredient, f *food.Food) {
	names := make([]string, 0, len(f.Portions))
	for _, p := range f.Portions {
		if p.Name == in.Line.Portion {
			in.Grams, in.GramsSD = p.Grams, p.SD
			return
		}
		names = append(names, note.Quote(p.Name))
	}
	do := "it has none: write grams"
	if len(names) > 0 {
		do = "it has " + strings.Join(names, ", ")
	}
	r.faults.Add(in.Line.Place, do, "%s has no portion %s", f.ID, note.Quote(in.Line.Portion))
}

func (r *resolver) item(f *food.Food, path []string, eaten bool) {
	if r.aside {
		return
	}
	own, isOwn := r.ownEntry(f)
	r.out.Items = append(r.out.Items, Item{Food: f, Path: path, Eaten: eaten, Own: isOwn, Stated: isOwn && own.Assessed})
}
