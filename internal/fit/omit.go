package fit

import (
	"context"
	"errors"
	"maps"
	"slices"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/recipe"
)

// Kitchen makes benches of drinks that nobody wrote.
type Kitchen func(context.Context, *drink.Drink) (Bench, *recipe.Recipe, error)

// Omission is a drink and its match, which lacks a part of it.
type Omission struct {
	Name    string                   // as it was asked for
	Of      *constituent.Constituent // for which the part was chosen; nil: the part itself was named
	What    string                   // what is left out, as lines write it: a component, or a food
	Called  string                   // as pages call it
	Lines   []drink.Line             // that are left out
	Undone  []Undone                 // steps that go with them
	Unread  []string                 // components whose readings no longer hold
	Places  []*Place                 // in pots that remain
	Drink   *drink.Drink             // without it, and with what was added
	Fillers []string                 // paths of what was added
	A       *assay.Assay             // the drink as it is written, with draws
	*Result                          // of the match: After is B
	Close   bool                     // the figures are as near as a scale can bring them, and not only within what a judge notices
	Remarks []string                 // what is not held, and why

	whole string  // the component that goes, if one was named
	food  food.ID // else the food
}

// Undone is a step of which nothing is left.
type Undone struct{ Pot, Step string } // Pot is empty for the finish

// Omit makes a drink's match without a component, or without the food that brings most of a
// constituent. Sugar, an acid and water take the place of what is gone, as fitted; every other line
// stays, so that nothing else differs. Errors are *fail.Error.
func Omit(ctx context.Context, b Bench, r *recipe.Recipe, name string, kitchen Kitchen) (*Omission, error) {
	o := &Omission{Name: name}
	var err error
	// with draws, for a reading moves what is central by them
	if o.A, err = b.Drawn.Run(ctx, nil, assay.Want{Intervals: true, Chemistry: true, Draws: true}); err != nil {
		return nil, err
	}
	if err := o.find(o.A, r, name); err != nil {
		return nil, err
	}
	if o.Drink, err = o.without(b.Drink, r); err != nil {
		return nil, err
	}
	if err := o.unreadBoth(ctx, &b, kitchen); err != nil {
		return nil, err
	}
	if err := o.fillPots(ctx, b.Drink, kitchen); err != nil {
		return nil, err
	}
	rest, err := o.rest(ctx, kitchen)
	if err != nil {
		return nil, err
	}
	o.fillBuild(o.A, rest)
	bench, _, err := kitchen(ctx, o.Drink)
	if err != nil {
		return nil, err
	}
	bench.Still, bench.Beside = true, o.A
	for _, o.Close = range []bool{true, false} {
		aims, err := o.aims(o.A, b.Declared)
		if err != nil {
			return nil, err
		}
		if o.Result, err = bench.Fit(ctx, aims); err != nil || o.Met {
			return o, err
		}
	}
	return o, nil
}

// unreadBoth takes the drink itself without the readings that no longer hold of its match: what a reading
// says of both pots must not look like what the part brought.
func (o *Omission) unreadBoth(ctx context.Context, b *Bench, kitchen Kitchen) error {
	if len(o.Unread) == 0 {
		return nil
	}
	d := *b.Drink
	d.Components = slices.Clone(d.Components)
	for i := range d.Components {
		if c := &d.Components[i]; slices.Contains(o.Unread, c.Name) {
			c.Measured, c.Steps = nil, withoutReadings(c.Steps)
		}
	}
	same, _, err := kitchen(ctx, &d)
	if err != nil {
		return err
	}
	*b = same
	o.A, err = b.Drawn.Run(ctx, nil, o.A.Want)
	return err
}

// rest is the drink without what is left out, before its build is filled.
func (o *Omission) rest(ctx context.Context, kitchen Kitchen) (*assay.Assay, error) {
	bench, _, err := kitchen(ctx, o.Drink)
	if err == nil {
		var a *assay.Assay
		if a, err = bench.Drawn.Run(ctx, nil, assay.Want{Draws: true, Chemistry: true}); err == nil {
			return a, nil
		}
	}
	var fault *fail.Error
	if fail.ExitCode(err) != fail.Wrong || !errors.As(err, &fault) {
		return nil, err
	}
	return nil, fail.New(fail.Wrong, "without "+note.Quote(o.What)+" a step cannot be done as it is written: "+fault.Faults[0].What, o.instead())
}

// instead says what to write where a part cannot be left out by itself.
func (o *Omission) instead() string {
	var pots []string
	for _, p := range o.Places {
		pots = append(pots, p.Pot)
	}
	for _, u := range o.Undone {
		if u.Pot != "" {
			pots = append(pots, u.Pot)
		}
	}
	if len(pots) == 0 {
		return "omit another part"
	}
	return "omit the whole pot: --omit " + note.Quote(pots[0])
}

// find tells what a name means: a component, a food that a line pours, or a constituent.
func (o *Omission) find(a *assay.Assay, r *recipe.Recipe, name string) error {
	for i := range r.Drink.Components {
		if c := &r.Drink.Components[i]; strings.EqualFold(c.Name, name) {
			o.What, o.Called, o.whole = c.Name, c.Name, c.Name
			return nil
		}
	}
	for _, path := range slices.Sorted(maps.Keys(r.Lines)) {
		in := r.Lines[path]
		if p := in.Profile; p != nil && (in.Line.Food == name || p.Food.ID.String() == name || strings.EqualFold(p.Food.Name(), name)) {
			o.What, o.Called, o.food = in.Line.Food, p.Food.Name(), p.Food.ID
			return o.fillsItself()
		}
	}
	c, err := constituent.Read(name, constituent.Any)
	if err != nil {
		return fail.New(fail.Wrong, note.Quote(name)+" is no component, food or constituent of the drink", "name a component as the file does, a food by its code (core:lemon-juice), or a constituent (malic acid)")
	}
	o.Of = c
	by := map[food.ID]float64{}
	sort := composition.SortOf(a.Serving, c)
	for row, of := range a.Serving.Rows {
		if col := sort.Of(row); col != nil && of.Line != "" {
			id := of.Profile.Food.ID
			by[id] += col[0]
			if by[id] > by[o.food] {
				o.food, o.What, o.Called = id, r.Lines[of.Line].Line.Food, of.Profile.Food.Name()
			}
		}
	}
	if o.What == "" {
		return fail.New(fail.Wrong, "nobody knows of "+c.Name+" in the drink", "name the component that is to be left out")
	}
	return o.fillsItself()
}

// fillsItself refuses to leave out what every match is filled with.
func (o *Omission) fillsItself() error {
	if o.filler(Volume).food == o.food.String() {
		return fail.New(fail.Wrong, note.Quote(o.What)+" is what takes the place of whatever is left out, so that nothing would be missing", "omit what brings taste: a component, a food, or a constituent")
	}
	return nil
}
