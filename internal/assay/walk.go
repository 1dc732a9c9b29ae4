package assay

import (
	"context"
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/drivers"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/prep"
	"sipsum/internal/reading"
	"sipsum/internal/recipe"
	"sipsum/internal/unit"
)

// walk follows a drink through the ledger, once.
type walk struct {
	ctx     context.Context // asked before each step and line: a large drink takes seconds
	plan    *Plan
	names   *recipe.Recipe
	ens     estimate.Ensemble
	amounts amount.Hand
	other   amount.Amounts // than those written
	made    []*made        // so far, inner ones before those that hold them
	making  *made          // what is being made
	faults  fail.List
}

// serve gives one serving: the build and what finishes it, divided among the guests, with
// the garnish that is eaten; and the same without its garnish, which is the liquid.
func (w *walk) serve() (served, liquid *ledger.Pot, err error) {
	d := w.names.Drink
	pot := w.plan.drawer.NewPot()
	w.pour(pot, d.Build)
	w.making.yield.In = weigh(pot)
	if err := w.ctx.Err(); err != nil {
		return nil, nil, err
	}
	w.steps(pot, d.Finish, nil)
	liquid = pot
	if slices.ContainsFunc(d.Garnish, func(l drink.Line) bool { return l.Eaten }) { // is eaten, and does not dissolve
		liquid = pot.Copy()
		w.pour(pot, d.Garnish)
	}
	if err := w.ctx.Err(); err != nil {
		return nil, nil, err
	}
	if err := w.faults.Err(fail.Wrong); err != nil {
		return nil, nil, err
	}
	share := w.ens.Of(1 / float64(d.Serves))
	pot.Scale(share)
	if liquid != pot {
		liquid.Scale(share)
	}
	return pot, liquid, nil
}

// component makes a component once.
func (w *walk) component(c *drink.Component) *made {
	for _, m := range w.made {
		if m.name == c.Name {
			return m
		}
	}
	if m := w.plan.keptOf(c.Name, w.other); m != nil {
		for _, e := range m.log {
			if e.within != nil {
				w.component(e.within) // kept too: it is made of the same
			}
		}
		w.made = append(w.made, m)
		return m
	}
	outer := w.making
	m := &made{name: c.Name, other: w.plan.within(c.Name, w.other), pot: w.plan.drawer.NewPot()}
	w.making = m
	w.pour(m.pot, c.Ingredients)
	m.yield = Yield{Component: c.Name, In: weigh(m.pot)}
	if w.ctx.Err() == nil {
		w.steps(m.pot, c.Steps, c.Measured)
		w.keep(c, m.pot)
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
		state = reading.Stated{Mass: does.KeepsWeight(step, state.Mass || reading.TakenOf(read)[amount.ReadMass]), Gas: does.StatesGas(step)}
		read = nil
		w.step(pot, step)
	}
	if end != nil {
		read = append(read, end)
	}
	w.read(pot, read, state)
	w.making.read, w.making.yield.Out = reading.TakenOf(read), weigh(pot)
	if w.ens.Journal != nil && len(pot.Rows) > 0 {
		w.making.samples = append(w.making.samples, drivers.SampleOf(w.bench(), w.making.name, pot, w.making.read))
	}
}

// pour adds lines to a pot, without a garnish that is not eaten. Shares (p %) are of the
// mass of the same list's other lines.
func (w *walk) pour(pot *ledger.Pot, lines []drink.Line) {
	var columns [][]float64
	absolute := make([]float64, w.ens.N)
	for _, line := range lines {
		in := w.names.Lines[line.Path]
		var grams []float64
		switch {
		case isShare(line):
		case in.Component != nil:
			grams = w.componentGrams(in)
		default:
			grams = w.grams(in)
		}
		for d := range grams {
			absolute[d] += grams[d]
		}
		columns = append(columns, grams)
	}
	for i, line := range lines {
		in, grams := w.names.Lines[line.Path], columns[i]
		if isShare(line) {
			grams = w.amounts.Column(line.Amount, line.Path)
			for d := range grams {
				grams[d] *= absolute[d]
			}
		}
		if line.Eaten {
			w.add(pot, in, grams)
		}
	}
}

func isShare(line drink.Line) bool {
	return line.Portion == "" && line.Amount.Measure.Kind == unit.Share
}

func (w *walk) add(pot *ledger.Pot, in recipe.Ingredient, grams []float64) {
	if w.ctx.Err() != nil {
		return
	}
	if in.Component == nil {
		pot.Pour(in.Profile, w.plan.drawer.PerGram(in.Profile), grams, in.Line.Path)
		if n := w.plan.lab.Calibrate(pot, grams); n != nil {
			w.note(*n)
		}
		return
	}
	from := w.component(in.Component)
	w.making.log = append(w.making.log, event{within: in.Component})
	factor := from.pot.Mass()
	if factor[0] <= 0 {
		w.faults.Add(in.Line.Place, "give it ingredients", "component %s is empty", note.Quote(in.Component.Name))
		return
	}
	for d := range factor {
		if factor[d] > 0 {
			factor[d] = grams[d] / factor[d]
		}
	}
	w.making.uses = append(w.making.uses, use{from.name, factor})
	pot.Mix(from.pot, factor, in.Component.Name)
}

// componentGrams gives the mass of a component's line; a volume takes the
// density that its composition gives.
func (w *walk) componentGrams(in recipe.Ingredient) []float64 {
	col := w.amounts.Column(in.Line.Amount, in.Line.Path)
	if in.Line.Amount.Measure.Kind != unit.Volume {
		return col
	}
	pot := w.component(in.Component).pot
	w.making.log = append(w.making.log, event{within: in.Component})
	mass, volume := pot.Mass(), w.volume(pot)
	for d := range col {
		if volume[d] > 0 {
			col[d] *= mass[d] / volume[d]
		}
	}
	return col
}

// step applies one step of the drink file to a pot.
func (w *walk) step(pot *ledger.Pot, step drink.Step) {
	if w.ctx.Err() != nil {
		return
	}
	path, before := step.StepPath(), weigh(pot)
	out, err := prep.MethodOf(step).Do(kitchen{w}, pot, step, prep.Factors{Ensemble: w.ens, Path: path})
	if err != nil {
		w.faults.Join(step.At(), err)
		return
	}
	w.making.yield.record(step, before, out.Lost.Mass(), weigh(pot))
	if out.Brewed {
		for _, n := range w.plan.lab.CalibrateBrew(pot, prep.EspressoStrength()) {
			w.note(n)
		}
	}
	if p := out.Parted; p != nil {
		w.plan.lab.CalibrateParted(pot, p.AtMost, p.Low, p.High, p.Source)
	}
	for _, text := range out.Notes {
		w.note(note.Note{Kind: "step", Text: path + ": " + text})
	}
}

// read takes readings of a pot.
func (w *walk) read(pot *ledger.Pot, read []*drink.Measured, state reading.Stated) {
	b, before := w.bench(), weigh(pot)
	b.Take(pot, read, state)
	if after := weigh(pot); len(read) > 0 && after != before {
		w.making.yield.record(read[len(read)-1], before, 0, after)
	}
	for _, n := range b.Notes {
		w.note(n)
	}
	for _, r := range b.Readings {
		w.making.log = append(w.making.log, event{reading: &r})
	}
}

func (w *walk) bench() *reading.Bench { return reading.NewBench(w.plan.lab, w.amounts, &w.faults) }

// volume gives the volume of a pot, in ml.
func (w *walk) volume(pot *ledger.Pot) []float64 { return w.plan.lab.Gauge.Volume(pot) }

func (w *walk) note(n note.Note) { w.making.log = append(w.making.log, event{note: &n}) }

// grams gives the mass of an ingredient line whose amount is not a share.
func (w *walk) grams(in recipe.Ingredient) []float64 {
	var col []float64
	if in.Line.Portion != "" {
		col = w.ens.Of(in.Line.Count)
	} else {
		col = w.amounts.Column(in.Line.Amount, in.Line.Path)
	}
	sd := in.GramsSD
	if !food.Stated(sd) {
		sd = 0
	}
	// A food has one density, whoever pours it: the stream is the food's.
	name := "density"
	if in.Line.Portion != "" {
		name = "portion/" + in.Line.Portion
	}
	each := w.ens.Column(estimate.Input{
		Central: in.Grams, Shape: estimate.Lognormal, SD: sd,
		Stream: w.ens.Stream(name, in.Profile.Food.ID.String()),
	})
	w.ens.Journal.Write(estimate.Tables, name+" of "+in.Profile.Food.ID.String(), each)
	for d := range col {
		col[d] *= each[d]
	}
	return col
}
