package assay

import (
	"context"
	"fmt"
	"math"
	"slices"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/drivers"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
	"sipsum/internal/meter"
	"sipsum/internal/note"
	"sipsum/internal/prep"
	"sipsum/internal/reading"
	"sipsum/internal/recipe"
)

// walk follows a drink through the ledger, once.
type walk struct {
	ctx     context.Context // asked before each step and line: a large drink takes seconds
	plan    *Plan
	samples bool        // somebody asks which reading to take next
	volumes bool        // somebody asks how much room each pot takes
	sour    bool        // somebody asks for its chemistry
	amounts amount.Hand // those written, or in their place
	made    []*made     // so far, inner ones before those that hold them
	making  *made       // what is being made
	faults  fail.List

	meters *meter.Run // the instruments of the shelf; nil: there are none
	survey *survey    // what was read is only asked of its instruments; nil: it counts
}

// serve gives one serving: the build and what finishes it, divided among the guests, with
// the garnish that is eaten; and the same without its garnish, which is the liquid.
func (w *walk) serve() (served, liquid *ledger.Pot, err error) {
	d := w.plan.recipe.Drink
	pot := w.plan.drawer.NewPot()
	w.pour(pot, d.Build)
	w.fizz(pot, "")
	w.making.yield.In = weigh(pot)
	if err := w.ctx.Err(); err != nil {
		return nil, nil, err
	}
	w.steps(pot, d.Finish, nil)
	w.concentrated(pot)
	liquid = pot
	if slices.ContainsFunc(d.Garnish, func(l drink.Line) bool { return l.Eaten }) { // is eaten, and does not dissolve
		liquid = pot.Copy()
		w.pour(pot, d.Garnish)
	}
	w.making.yield.left(pot)
	if err := w.ctx.Err(); err != nil {
		return nil, nil, err
	}
	if err := w.faults.Err(fail.Wrong); err != nil {
		return nil, nil, err
	}
	share := w.plan.ens.Of(1 / float64(d.Serves))
	pot.Scale(share)
	if liquid != pot {
		liquid.Scale(share)
	}
	w.making.bubbles.take(share)
	return pot, liquid, nil
}

// concentrated counts what the drink has of concentrated juice as added, and says so.
func (w *walk) concentrated(pot *ledger.Pot) {
	counted := prep.AddConcentrated(pot, w.volume)
	for row, r := range pot.Rows {
		if x := counted[row] / float64(w.plan.recipe.Drink.Serves); x > wordy {
			w.note(note.Note{Kind: "added sugar", Constituent: constituent.AddedSugar, Foods: []string{r.Profile.Food.ID.String()}, Text: fmt.Sprintf(
				"%s is concentrated: %s g a serving of its sugars are more than the same volume of the juice has, and no other water of the drink makes up for it; US cards count them as added (21 CFR 101.9(c)(6)(iii))",
				w.plan.recipe.Called[recipe.PartID{Food: r.Profile.Food.ID}], note.Number(x))})
		}
	}
}

// wordy is the added sugar in grams that is worth a word: below it no card prints any
// (21 CFR 101.9(c)(6)(iii)).
const wordy = 0.5

// component makes a component once.
func (w *walk) component(c *drink.Component) *made {
	if m := named(w.made, c.Name); m != nil {
		return m
	}
	if m := w.keptOf(c.Name); m != nil && w.survey == nil {
		for _, e := range m.log {
			if e.within != nil {
				w.component(e.within) // kept too: it is made of the same
			}
		}
		w.made = append(w.made, m)
		return m
	}
	outer := w.making
	m := &made{name: c.Name, other: w.plan.within(c.Name, w.amounts.Other), pot: w.plan.drawer.NewPot(), volumes: w.volumes, sour: w.sour}
	w.making = m
	w.pour(m.pot, c.Ingredients)
	w.fizz(m.pot, c.Name)
	m.yield.Component, m.yield.In = c.Name, weigh(m.pot)
	if w.ctx.Err() == nil {
		w.steps(m.pot, c.Steps, c.Measured)
		w.keep(c, m.pot)
		m.yield.left(m.pot)
		w.made = append(w.made, m)
	}
	w.making = outer
	return m
}

// steps applies steps to a pot, and what was read of it at the end. Readings that
// follow one another are of one state of the pot, so they are taken together.
func (w *walk) steps(pot *ledger.Pot, steps []drink.Step, end *drink.Measured) {
	var read []*drink.Measured
	var state reading.Stated
	for _, step := range steps {
		if m, ok := step.(*drink.Measured); ok {
			read = append(read, m)
			continue
		}
		w.read(pot, read, state)
		does := prep.MethodOf(step)
		taken := reading.TakenOf(read)
		state = reading.Stated{Mass: does.KeepsWeight(step, state.Mass || taken[amount.ReadMass]), Gas: does.StatesGas(step), Met: prep.Met(step)}
		read = nil
		w.step(pot, step, taken.Acidity())
	}
	if end != nil {
		read = append(read, end)
	}
	w.read(pot, read, state)
	w.making.read, w.making.yield.Out, w.making.yield.Volume = reading.TakenOf(read), weigh(pot), w.room(pot)
	w.making.yield.Filled = w.making.bubbles.room(w.making.yield.Volume)
	if w.samples && len(pot.Rows) > 0 {
		w.making.samples = append(w.making.samples, drivers.SampleOf(w.bench(), w.making.name, pot, w.making.read))
	}
}

// step applies one step of the drink file to a pot, of which something may just have been read.
func (w *walk) step(pot *ledger.Pot, step drink.Step, read acidity.Surely) {
	if w.ctx.Err() != nil {
		return
	}
	path, before := step.StepPath(), weigh(pot)
	out, err := prep.MethodOf(step).Do(kitchen{w, read}, pot, step, prep.Factors{Ensemble: w.plan.ens, Path: path})
	if err != nil {
		w.faults.Join(step.At(), err)
		return
	}
	gas := 0.0
	if !closed(step) {
		gas = w.fizz(pot, note.Place(path))
	}
	after := weigh(pot)
	if before > 0 && after == 0 {
		w.faults.Add(step.At(), "keep some of it", "%s leaves nothing", step.Kind())
		return
	}
	w.making.yield.record(step, before, out.Lost.Mass()+gas, after)
	w.making.yield.Steps[len(w.making.yield.Steps)-1].Volume = w.room(pot)
	w.bubble(pot, step, out.Foamed, read)
	if out.Brewed {
		for _, n := range w.plan.lab.CalibrateBrew(pot, prep.EspressoStrength()) {
			w.note(n)
		}
	}
	if p := out.Parted; p != nil {
		w.plan.lab.CalibrateParted(pot, p.AtMost, p.Low, p.High, p.Source)
	}
	if said := step.Said(); said != "" {
		out.Notes = append([]string{said}, out.Notes...)
	}
	if out.Dosed != nil {
		w.making.log = append(w.making.log, event{dosed: out.Dosed})
	}
	for _, text := range out.Notes {
		w.note(note.Note{Kind: "step", Text: note.Place(path) + ": " + text})
	}
}

// read takes readings of a pot.
func (w *walk) read(pot *ledger.Pot, read []*drink.Measured, state reading.Stated) {
	b, before := w.bench(), weigh(pot)
	if w.survey != nil {
		read = w.survey.ask(b, pot, read)
	}
	b.Take(pot, read, state)
	w.making.doubted = w.making.doubted || b.Doubted
	if after := weigh(pot); len(read) > 0 && after != before {
		w.making.yield.record(read[len(read)-1], before, 0, after)
		w.making.bubbles.take(w.plan.ens.Of(after / before))
	}
	for _, n := range b.Notes {
		w.note(n)
	}
	for _, r := range b.Readings {
		w.making.log = append(w.making.log, event{reading: &r})
	}
	for _, t := range b.Titrated {
		w.making.log = append(w.making.log, event{titrated: &t})
	}
}

func (w *walk) bench() *reading.Bench {
	b := reading.NewBench(w.plan.lab, w.amounts, &w.faults)
	b.Meters = w.meters
	return b
}

// volume gives the volume of a pot, in ml.
func (w *walk) volume(pot *ledger.Pot) []float64 { return w.plan.lab.Gauge.Volume(pot) }

// room is the central volume of a pot, if somebody asks; NaN where nobody knows how much room it takes,
// or it is no liquid.
func (w *walk) room(pot *ledger.Pot) float64 {
	switch {
	case !w.volumes:
		return 0
	case liquid.NoVolume(pot) != "" || liquid.TooDry(pot) != "":
		return math.NaN()
	}
	return w.volume(pot)[0]
}

// closed tells a step that charges a closed vessel: no gas gets out of it.
func closed(step drink.Step) bool {
	switch s := step.(type) {
	case *drink.Carbonate:
		return true
	case *drink.Foam:
		return s.Gas != ""
	}
	return false
}

func (w *walk) note(n note.Note) { w.making.log = append(w.making.log, event{note: &n}) }
