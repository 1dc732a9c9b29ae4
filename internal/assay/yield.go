package assay

import (
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
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
}

// StepYield is what a step, or what was read after it, made of the mass.
type StepYield struct {
	Path, Kind  string
	In, Out     float64
	Lost, Added float64
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
	y.Steps = append(y.Steps, StepYield{step.StepPath(), step.Kind(), before, after, lost, added})
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
