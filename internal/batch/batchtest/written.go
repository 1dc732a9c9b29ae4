package batchtest

import (
	"math"

	"sipsum/internal/batch"
	"sipsum/internal/drink"
	"sipsum/internal/unit"
)

// Written makes of a drink what a file would say that serves the whole of a batch at once: all
// amounts multiplied, nothing rounded. Bottles and brews are as large as all of them together.
func Written(d *drink.Drink, b *batch.Batch) {
	times := Times(b)
	d.Serves = int(math.Round(b.Rounds * float64(d.Serves)))
	Change(d, func(path string, a *unit.Amount, count *float64) {
		k, weighed := times[path]
		if !weighed { // nothing of it is drunk
			return
		}
		if a.Measure.Kind != unit.Share {
			a.Number, a.Half = a.Number*k, a.Half*k
		}
		*count *= k
	})
}

// Times tells by path how often what a file writes is weighed in a batch.
func Times(b *batch.Batch) map[string]float64 {
	times := map[string]float64{}
	add := func(list []batch.Weighed) {
		for _, w := range list {
			times[w.Path] = w.Times
		}
	}
	moves := func(list []batch.Move) {
		for _, m := range list {
			add(m.Lines)
			add(m.Amounts)
		}
	}
	for _, p := range b.Pots {
		add(p.Lines)
		moves(p.Moves)
	}
	for _, p := range append(b.Build, b.Garnish...) {
		times[p.Path] = p.Times
	}
	moves(b.Finish)
	return times
}

// Change lets somebody change every amount of a drink that grows with it; count is of portions.
func Change(d *drink.Drink, do func(path string, a *unit.Amount, count *float64)) {
	lines := func(list []drink.Line) {
		for i := range list {
			do(list[i].Path, &list[i].Amount, &list[i].Count)
		}
	}
	steps := func(list []drink.Step) {
		for _, step := range list {
			lines(step.Lines())
			for _, p := range batch.Growing(step) {
				do(step.StepPath()+"/"+p.Name, p.Amount, new(float64))
			}
		}
	}
	lines(d.Build)
	lines(d.Garnish)
	steps(d.Finish)
	for i := range d.Components {
		c := &d.Components[i]
		lines(c.Ingredients)
		steps(c.Steps)
		if c.Measured != nil {
			steps([]drink.Step{c.Measured})
		}
	}
}
