package assay

import (
	"slices"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/curdling"
	"sipsum/internal/drink"
	"sipsum/internal/drivers"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/meter"
	"sipsum/internal/note"
	"sipsum/internal/prep"
	"sipsum/internal/reading"
	"sipsum/internal/recipe"
	"sipsum/internal/titration"
)

// Want is what is asked of a run.
type Want struct {
	Figures []constituent.ID // reported even if nobody knows them, with their parts

	// Whole asks for every figure of every component, for intervals per 100 g and 100 ml
	// and for the share of every contribution. Without it components and shares are given
	// for Figures and energy only: all that a page prints.
	Whole bool

	Bare      bool // the serving alone: nothing of its components, no shares, not whether milk curdles
	Intervals bool // without them Low and High are the mean, and nothing says up to what
	Chemistry bool // pH and acidity of the drink and its components, where milk curdles, how components keep
	Draws     bool // the draws of the serving's figures (those of the chemistry always come along)

	Why  constituent.ID // ask what drives this figure; empty: nobody asks
	Next bool           // ask which reading to take next
	Kits bool           // ask what a titration of each pot, or a further point of one, would tell

	Degassed bool // ask for the pH when the gas has left
	Volumes  bool // ask how much room each pot takes, after each of its steps
}

// Assay is a drink calculated.
type Assay struct {
	Drink *drink.Drink
	Want  Want
	Ensemble
	Serving *ledger.Pot // one serving, what is eaten
	Size
	Basis
	Components []Component
	Against
	Chemistry *chemistry.Chemistry
	Curdling  *curdling.Judgement // nil if nothing in the drink may curdle, or nothing sours it
	// TableEnergy is in kJ and in kcal.
	TableEnergy [2]composition.TableEnergy
	Answers
	Readings []reading.Reading // what was read, in the order in which the pots were made
	Told
	Yields  []Yield       // of components, inner ones first, and of the drink
	Doses   []Dose        // what lines weigh in, inner components first
	Items   []recipe.Item // every food in the drink, garnish included
	Garnish []recipe.Garnish
	Notes   []note.Note

	recipe *recipe.Recipe
}

// Told is what the pots told of themselves beside what was read, in the order in which they were made.
type Told struct {
	Adjusted []prep.Dosed     // the doses that steps calculated
	Titrated []titration.Told // what titrations tell of acids
	Meters   []meter.Found    // what the pots tell of the instruments that read several of them
}

// Against is what compare-with names.
type Against struct {
	Alone *Component   // the first; nil if it names nothing
	Also  []*Component // further ones, in the order of the file
}

// Ensemble says which draws a run has, and how many.
type Ensemble struct {
	Seed  uint64
	Draws int
	Only  string // the one kind of input that varies in them; "": all do
}

// Size is how much a serving is.
type Size struct {
	Mass    composition.Result // g
	Volume  composition.Result // ml, of its liquid
	Filled  composition.Result // ml that it fills, with the bubbles of its foams
	Density composition.Result // g/ml

	Strength composition.Result // % vol of what is liquid; only with draws

	Foams []Foam // of components, inner ones first, and of the drink; none of a bare run

	liquid liquidPart
}

// liquidPart is what is liquid of a serving, as columns.
type liquidPart struct {
	pot    *ledger.Pot
	volume []float64 // ml
	lab    *acidity.Laboratory
	water  ledger.Cells // of a gram of what ice melts to
}

// Basis is the composition of a serving, and of 100 g and 100 ml of it.
type Basis struct {
	PerServing composition.Composition
	Per100g    composition.Composition // only if Whole
	Per100ml   composition.Composition // without intervals unless Whole
}

// Answers are to the questions of a run that keeps its inputs.
type Answers struct {
	Drivers     *drivers.Drivers     // of Why; nil if not asked, or if the drink has none of it
	Suggestions []drivers.Suggestion // of Next
	Outlooks    []titration.Outlook  // of Kits
	Inputs      []estimate.Entry     // all that is uncertain; of a run whose ensemble has a journal

	samples []drivers.Sample
	bench   *reading.Bench
}

// Closing ranks the readings that nobody has taken by how much they narrow a column of the
// serving's draws, such as the margin of a claim. Next must have been asked.
func (a Answers) Closing(column []float64) []drivers.Suggestion {
	if a.bench == nil {
		return nil
	}
	return drivers.Closing(a.bench, a.samples, column)
}

// Component is the part of a serving that came of one component or food of the build.
type Component struct {
	ID           recipe.PartID
	Name         string   // by which readers tell it from the others (see called)
	House        bool     // made by the drink file, not poured directly
	Lines        []string // the paths of the lines that pour it
	Mass         composition.Result
	Constituents composition.Composition
	Chemistry    *chemistry.Chemistry // of what the component is in its jar; nil unless House
}

// dissolve works the serving, without its garnish, and its house-made components out as
// solutions.
func (a *Assay) dissolve(p *Plan, list []*made) {
	if !a.Want.Chemistry {
		return
	}
	celsius := a.celsius()
	a.Chemistry = list[len(list)-1].chemistry(p.lab, chemistry.Liquid{Celsius: celsius, Degassed: a.Want.Degassed})
	if a.Want.Bare {
		return
	}
	a.Curdling = curdling.Judge(p.lab, a.pour(celsius))
	for i, c := range a.Components {
		if c.House {
			house, _ := a.Drink.Component(c.ID.Component)
			a.Components[i].Chemistry = named(list, house.Name).chemistry(p.lab, chemistry.Liquid{Celsius: celsius, House: true, Keeps: house.Keeps})
		}
	}
}

// celsius is how warm the drink is served, else how warm a meter reads.
func (a *Assay) celsius() float64 {
	if a.Drink.At != nil {
		return a.Drink.At.Number
	}
	return acidity.MeterCelsius
}

// pour is the serving as it is poured together.
func (a *Assay) pour(celsius float64) curdling.Pour {
	p := curdling.Pour{Mass: a.Serving.Central(constituent.Mass), Celsius: celsius, Assumed: a.Drink.At == nil, Curdled: a.curdled}
	for _, id := range a.parts() {
		p.Parts = append(p.Parts, curdling.PourPart{Name: a.recipe.Called[id], House: id.Component != "", Pot: a.only(id)})
	}
	return p
}

// curdled reports whether a component that a row came through was curdled.
func (a *Assay) curdled(r ledger.Row) bool {
	for i := range a.Drink.Components {
		c := &a.Drink.Components[i]
		if slices.Contains(r.Path, c.Name) && slices.ContainsFunc(c.Steps, drink.Curdles) {
			return true
		}
	}
	return false
}

// foresee tells what titrations of what was made would tell, beside those that were begun.
func (a *Answers) foresee(p *Plan, list []*made, begun []titration.Told) {
	hand := amount.Hand{Ens: p.ens, Scale: p.recipe.Drink.Scale}
	for _, m := range list {
		read := false
		for _, t := range begun {
			if t.Component() == m.name {
				a.Outlooks, read = append(a.Outlooks, *t.Outlook()), true
			}
		}
		if o := titration.Foresee(p.lab, hand, m.name, m.pot); !read && o != nil {
			a.Outlooks = append(a.Outlooks, *o)
		}
	}
}

// ask answers the questions of a run that keeps its inputs.
func (a *Assay) ask(p *Plan, list []*made) {
	a.Inputs = p.ens.Journal.Entries()
	if a.Want.Kits {
		a.foresee(p, list, a.Titrated)
	}
	if f, ok := a.PerServing.Find(a.Want.Why); ok {
		a.Drivers = drivers.Of(f, a.Serving, p.ens.Journal.Entries())
	}
	if !a.Want.Next {
		return
	}
	for _, m := range list {
		a.samples = append(a.samples, m.samples...)
	}
	a.bench = reading.NewBench(p.lab, amount.Hand{Ens: p.ens, Scale: a.Drink.Scale}, nil)
	a.Suggestions = drivers.Next(a.bench, a.samples, a.Want.Figures, a.Serving)
}
