package rewrite

import (
	"sipsum/internal/amount"
	"sipsum/internal/batch"
	"sipsum/internal/drink"
	"sipsum/internal/unit"
)

// Differ gives the amounts that a drink has otherwise than another, by path; false if they differ in
// anything else, or in what an amount is measured in.
func Differ(was, now *drink.Drink) (amount.Amounts, bool) {
	before, after := amountsOf(was), amountsOf(now)
	differ := amount.Amounts{}
	for path, a := range after { // before anything is set aside: who is told "no" keeps the drink as it was
		if b, ok := before[path]; !ok || b.Measure.Kind != a.Measure.Kind {
			return nil, false
		}
	}
	for path, a := range after {
		if b := before[path]; *a != *b {
			differ[path] = *a
			*a = *b
		}
	}
	alike := same(was, now)
	for path, a := range differ {
		*after[path] = a
	}
	return differ, alike
}

// amountsOf gives the amounts of a drink by their paths; what is counted is none.
func amountsOf(d *drink.Drink) map[string]*unit.Amount {
	all := map[string]*unit.Amount{}
	lines := func(list []drink.Line) {
		for i := range list {
			if list[i].Portion == "" {
				all[list[i].Path] = &list[i].Amount
			}
		}
	}
	steps := func(list []drink.Step) {
		for _, s := range list {
			lines(s.Lines())
			for _, p := range batch.Growing(s) {
				all[s.StepPath()+"/"+p.Name] = p.Amount
			}
		}
	}
	lines(d.Build)
	lines(d.Garnish)
	steps(d.Finish)
	for i := range d.Components {
		lines(d.Components[i].Ingredients)
		steps(d.Components[i].Steps)
	}
	return all
}
