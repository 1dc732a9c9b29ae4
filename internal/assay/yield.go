package assay

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
	"sipsum/internal/recipe"
)

// Yield is what became of the mass of a component, or of the drink, for all that was made
// of it, in grams at central values:
//
//	In + Σ Added − Σ Lost = Out
type Yield struct {
	Component string // empty: the drink
	In        float64
	Out       float64
	Used      float64 // of Out, what the drink and other components take; of the drink all
	Steps     []StepYield
	Weighed   []Weighed // what it was made of, in order; of what steps add, water and gas
	Poured    []Poured  // what each line weighed in, in order, waters among them
	Volume    float64   // ml of Out, if the run was asked for volumes; NaN: nobody knows
	Filled    float64   // the same as it is poured, with the bubbles of its foams
}

// Poured is what a line weighed in, in grams at central values, whatever became of it.
type Poured struct {
	Path      string
	Component string
	Food      *food.Food // nil if a component
	Grams     float64
}

// Weighed is how much of a component or a food was weighed in, in grams at central values. Water
// and gas are as much as is left of them when all is made.
type Weighed struct {
	Component string
	Food      *food.Food // nil if a component
	Grams     float64
}

// pour writes down a line.
func (y *Yield) pour(in recipe.Ingredient, grams float64) {
	p := Weighed{Grams: grams}
	if in.Component != nil {
		p.Component = in.Component.Name
	} else {
		p.Food = in.Profile.Food
	}
	y.Weighed = append(y.Weighed, p)
	y.Poured = append(y.Poured, Poured{in.Line.Path, p.Component, p.Food, grams})
}

// left writes down what is left of water and gas, whoever poured them.
func (y *Yield) left(pot *ledger.Pot) {
	fleeting := func(f *food.Food) bool { return f != nil && (f.Group == waterGroup || f.ID == prep.Gas().ID) }
	y.Weighed = slices.DeleteFunc(y.Weighed, func(p Weighed) bool { return fleeting(p.Food) })
	for i, row := range pot.Rows {
		if len(row.Path) == 0 && fleeting(row.Profile.Food) {
			y.Weighed = append(y.Weighed, Weighed{Food: row.Profile.Food, Grams: pot.CentralOf(i, constituent.Mass)})
		}
	}
}

// waterGroup is the group of data/groups.csv that holds waters.
const waterGroup = "water"

// StepYield is what a step, or what was read after it, made of the mass.
type StepYield struct {
	Path, Kind  string
	In, Out     float64
	Lost, Added float64
	Volume      float64 // ml of Out, if the run was asked for volumes; NaN: nobody knows
}

// weigh gives the mass of a pot.
func weigh(pot *ledger.Pot) float64 { return pot.Central(constituent.Mass) }

// record writes down what a step made of a pot that weighed before; lost is what it says
// that it took out. What it does not say came or went is taken from the masses.
func (y *Yield) record(step drink.Step, before, lost, after float64) {
	added := after - before + lost
	if added < 0 {
		lost, added = lost-added, 0
	}
	y.Steps = append(y.Steps, StepYield{Path: step.StepPath(), Kind: step.Kind(), In: before, Out: after, Lost: lost, Added: added})
}

// yields gives those of all that was made for a run, inner ones first, the drink last.
func yields(list []*made) []Yield {
	out := make([]Yield, len(list))
	for i, m := range list {
		out[i] = m.yield
		if m.name == "" {
			out[i].Used = m.yield.Out
			continue
		}
		for _, other := range list {
			for _, u := range other.uses {
				if u.of == m.name {
					out[i].Used += u.share[0] * m.yield.Out
				}
			}
		}
	}
	return out
}
