package assay

import (
	"context"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Foods is what the assay needs of a library of foods.
type Foods interface {
	// Food gives a food, or a *fail.Error that says what is missing.
	Food(ctx context.Context, id food.ID) (*food.Food, error)
	// Named gives the food whose name is exactly this, if there is one.
	Named(ctx context.Context, name string) (food.ID, bool, error)
	// Near suggests foods for a text that names none.
	Near(ctx context.Context, text string) []string
}

// Options of a run.
type Options struct {
	Draws  int
	Seed   uint64
	Wanted []constituent.ID // reported even if nobody knows them

	// Whole asks for every figure of every component, for intervals per 100 g
	// and 100 ml and for the share of every contribution. Without it components
	// and shares are given for Wanted and energy only: all that a page prints.
	Whole bool

	Why  constituent.ID // ask what drives this figure; empty: nobody asks
	Next bool           // ask which reading to take next

	Degassed bool // ask for the pH when the gas has left
}

// Assay is a drink calculated.
type Assay struct {
	Drink *drink.Drink
	Options
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
	Curdling   *Curdling // nil if nothing in the drink may curdle, or nothing sours it
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

// Item is a food of the drink and where it stands, for the allergens.
type Item struct {
	Food   *food.Food
	Path   []string
	Eaten  bool
	Own    bool
	Stated bool // an own food that says what allergens it has
}

// Note is something the user should know.
type Note struct {
	Kind        string
	Constituent constituent.ID
	Foods       []string
	Text        string
}

// Run calculates a drink. faults are those that reading the file found: they
// are reported together with the assay's own.
func Run(ctx context.Context, d *drink.Drink, faults *fail.List, foods Foods, o Options) (*Assay, error) {
	r, err := resolve(ctx, d, faults, foods)
	if err != nil {
		return nil, err
	}
	w := newWalk(ctx, d, r, o)
	served, err := w.serve()
	if err != nil {
		return nil, err
	}
	a := &Assay{
		Drink: d, Options: o, Serving: served, Readings: w.readings, Items: r.items, Garnish: r.garnish(d), Notes: w.notes, names: r.names,
	}
	a.measure(w)
	a.dissolve(w)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if o.Why != "" {
		a.Drivers = a.why(o.Why, w.journal)
	}
	if o.Next {
		a.Suggestions = a.next(w)
	}
	a.noteFoods(r)
	a.noteUnknowns()
	return a, nil
}
