package prep

import (
	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// Method is all that is known of a step of the drink file beside its grammar.
type Method interface {
	// Makes lists the constituents that a step may make where no food of the drink has
	// them: the ledger needs a column for each.
	Makes(step drink.Step) []constituent.ID
	// Brings gives the food that the step pours and nobody names, nil if there is none.
	Brings() *food.Food
	// KeepsWeight reports whether the mass of a pot is stated after a step: because the
	// step states it, or because it was and the step leaves no water open.
	KeepsWeight(step drink.Step, weighed bool) bool
	// StatesGas reports whether the carbon dioxide of a pot is stated in g/l after a step.
	StatesGas(step drink.Step) bool
	// Do does the step to a pot. An error says what cannot be; without a place of its own
	// it is of the step.
	Do(k Kitchen, pot *ledger.Pot, step drink.Step, f Factors) (Outcome, error)
}

// MethodOf gives the method of a step, nil if this version does not calculate it.
func MethodOf(step drink.Step) Method { return methods[step.Kind()] }

// Kitchen is what a step needs of whoever follows a drink. Paths are those of the step,
// with the name of the parameter.
type Kitchen interface {
	// Amount gives a written amount as a column, in its base unit.
	Amount(a unit.Amount, path string) []float64
	// Quantity gives a quantity times factor as a column.
	Quantity(q drink.Quantity, factor float64, path string) []float64
	// Pour adds lines to a pot.
	Pour(pot *ledger.Pot, lines []drink.Line)
	// Drawn gives a food that a step brings (Method.Brings), or pure water.
	Drawn(f *food.Food) (*food.Profile, ledger.Cells)
	// Volume gives the millilitres of a pot.
	Volume(pot *ledger.Pot) []float64
	// Refracted gives the mass that a refractometer takes for solids.
	Refracted(pot *ledger.Pot) []float64
	// Hold reports figures that 100 g cannot hold together.
	Hold(figures []drink.Stated) error
	// Laboratory solves pots, and Surely is what was read of the pot as it stands.
	Laboratory() *acidity.Laboratory
	Surely() acidity.Surely
	// Doser gives what a line pours, by grams instead of its amount, into a copy of the pot:
	// nothing is weighed in. Weigh pours so much of it into the pot.
	Doser(line drink.Line) (pour func(pot *ledger.Pot, grams []float64), name string)
	Weigh(pot *ledger.Pot, line drink.Line, grams []float64)
}

// weighing is what a step does to what is known of a pot's mass.
type weighing int

const (
	leavesOpen weighing = iota + 1 // it brings or takes what nobody weighed
	asBefore
	states
)

// method is the method of the steps of one type. Every one has weight and do.
type method[S drink.Step] struct {
	weight weighing
	weighs func(S) bool // the step states the mass after all; nil: never
	gas    func(S) bool // the step states what gas is left in g/l; nil: never

	makes     []constituent.ID
	alsoMakes func(S) []constituent.ID // as the step says
	brings    func() *food.Food

	do func(at, S) (Outcome, error)
}

func (m method[S]) Makes(step drink.Step) []constituent.ID {
	if m.alsoMakes == nil {
		return m.makes
	}
	return append(m.alsoMakes(step.(S)), m.makes...)
}

func (m method[S]) Brings() *food.Food {
	if m.brings == nil {
		return nil
	}
	return m.brings()
}

func (m method[S]) KeepsWeight(step drink.Step, weighed bool) bool {
	switch {
	case m.weight == states, m.weighs != nil && m.weighs(step.(S)):
		return true
	case m.weight == asBefore:
		return weighed
	case m.weight == leavesOpen:
		return false
	}
	panic("prep: nothing says what " + step.Kind() + " does to the weight")
}

func (m method[S]) StatesGas(step drink.Step) bool { return m.gas != nil && m.gas(step.(S)) }

func (m method[S]) Do(k Kitchen, pot *ledger.Pot, step drink.Step, f Factors) (Outcome, error) {
	return m.do(at{k, f, pot}, step.(S))
}

// at is where a step is done.
type at struct {
	Kitchen
	Factors
	pot *ledger.Pot
}

// amount gives the column of an amount that may be left out.
func (a at) amount(of *unit.Amount, name string) []float64 {
	if of == nil {
		return nil
	}
	return a.Amount(*of, a.Path+"/"+name)
}

// figure gives the column of a quantity that may be left out.
func (a at) figure(q *drink.Quantity, factor float64, name string) []float64 {
	if q == nil {
		return nil
	}
	return a.Quantity(*q, factor, a.Path+"/"+name)
}

// share gives the column of a share in per cent that may be left out.
func (a at) share(q *drink.Quantity, name string) []float64 {
	const percent = 0.01
	return a.figure(q, percent, name)
}

// aside pours lines into a pot of their own.
func (a at) aside(lines []drink.Line) *ledger.Pot {
	pot := ledger.New(a.pot.Columns, a.pot.N)
	a.Pour(pot, lines)
	return pot
}

// water pours pure water, whose grams are a column.
func (a at) water(grams []float64) Outcome {
	water, perGram := a.Drawn(PureWater())
	return Water(a.pot, water, perGram, grams, a.Path)
}
