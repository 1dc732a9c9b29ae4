package assay

import (
	"context"
	"slices"

	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
	"sipsum/internal/unit"
)

// walk follows a drink through the ledger, once.
type walk struct {
	ctx     context.Context // asked before each step and line: a large drink takes seconds
	plan    *Plan
	names   *resolved
	ens     estimate.Ensemble
	amounts hand
	other   Amounts // than those written
	made    []*made // so far, inner ones before those that hold them
	making  *made   // what is being made
	faults  fail.List
}

// serve gives one serving: the build and what finishes it, divided among the guests, with
// the garnish that is eaten; and the same without its garnish, which is the liquid.
func (w *walk) serve() (served, liquid *ledger.Pot, err error) {
	d := w.names.drink
	pot := w.plan.drawer.NewPot()
	w.pour(pot, d.Build)
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
	var state stated
	for _, step := range steps {
		if m, ok := step.(*drink.Measured); ok {
			read = append(read, m)
			continue
		}
		w.read(pot, read, state)
		does := prep.MethodOf(step)
		state = stated{does.KeepsWeight(step, state.mass || takenOf(read)[readMass]), does.StatesGas(step)}
		read = nil
		w.step(pot, step)
	}
	if end != nil {
		read = append(read, end)
	}
	w.read(pot, read, state)
	w.making.read = takenOf(read)
	if w.ens.Journal != nil && len(pot.Rows) > 0 {
		w.making.samples = append(w.making.samples, sampleOf(w.bench(), w.making.name, pot, w.making.read))
	}
}

// pour adds lines to a pot, without a garnish that is not eaten. Shares (p %) are of the
// mass of the same list's other lines.
func (w *walk) pour(pot *ledger.Pot, lines []drink.Line) {
	var columns [][]float64
	absolute := make([]float64, w.ens.N)
	for _, line := range lines {
		in := w.names.lines[line.Path]
		var grams []float64
		switch {
		case isShare(line):
		case in.component != nil:
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
		in, grams := w.names.lines[line.Path], columns[i]
		if isShare(line) {
			grams = w.amounts.column(line.Amount, line.Path)
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

func (w *walk) add(pot *ledger.Pot, in ingredient, grams []float64) {
	if w.ctx.Err() != nil {
		return
	}
	if in.component == nil {
		pot.Pour(in.profile, w.plan.drawer.PerGram(in.profile), grams, in.line.Path)
		if n := w.plan.lab.calibrate(pot, grams); n != nil {
			w.note(*n)
		}
		return
	}
	from := w.component(in.component)
	w.making.log = append(w.making.log, event{within: in.component})
	factor := from.pot.Mass()
	if factor[0] <= 0 {
		w.faults.Add(in.line.Place, "give it ingredients", "component %s is empty", quote(in.component.Name))
		return
	}
	for d := range factor {
		if factor[d] > 0 {
			factor[d] = grams[d] / factor[d]
		}
	}
	w.making.uses = append(w.making.uses, use{from.name, factor})
	pot.Mix(from.pot, factor, in.component.Name)
}

// componentGrams gives the mass of a component's line; a volume takes the
// density that its composition gives.
func (w *walk) componentGrams(in ingredient) []float64 {
	col := w.amounts.column(in.line.Amount, in.line.Path)
	if in.line.Amount.Measure.Kind != unit.Volume {
		return col
	}
	pot := w.component(in.component).pot
	w.making.log = append(w.making.log, event{within: in.component})
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
	path := step.StepPath()
	out, err := prep.MethodOf(step).Do(kitchen{w}, pot, step, prep.Factors{
		Seed: w.ens.Seed, N: w.ens.N, Path: path,
		Trace: func(name string, col []float64) { w.ens.Journal.Write(estimate.Steps, path+": "+name, col) },
	})
	if err != nil {
		w.faults.Join(step.At(), err)
		return
	}
	if out.Brewed {
		for _, n := range w.plan.lab.calibrateBrew(pot) {
			w.note(n)
		}
	}
	if out.Parted != nil {
		w.plan.lab.calibrateParted(pot, out.Parted)
	}
	for _, text := range out.Notes {
		w.note(Note{Kind: "step", Text: path + ": " + text})
	}
}

// read takes readings of a pot.
func (w *walk) read(pot *ledger.Pot, read []*drink.Measured, state stated) {
	b := w.bench()
	b.take(pot, read, state)
	for _, n := range b.notes {
		w.note(n)
	}
	for _, r := range b.readings {
		w.making.log = append(w.making.log, event{reading: &r})
	}
}

func (w *walk) bench() *bench { return newBench(w.plan.lab, w.amounts, &w.faults) }

// volume gives the volume of a pot, in ml.
func (w *walk) volume(pot *ledger.Pot) []float64 { return w.plan.lab.gauge.volume(pot) }

func (w *walk) note(n Note) { w.making.log = append(w.making.log, event{note: &n}) }

// grams gives the mass of an ingredient line whose amount is not a share.
func (w *walk) grams(in ingredient) []float64 {
	var col []float64
	if in.line.Portion != "" {
		col = w.ens.Of(in.line.Count)
	} else {
		col = w.amounts.column(in.line.Amount, in.line.Path)
	}
	sd := in.gramsSD
	if !food.Stated(sd) {
		sd = 0
	}
	// A food has one density, whoever pours it: the stream is the food's.
	name := "density"
	if in.line.Portion != "" {
		name = "portion/" + in.line.Portion
	}
	each := w.ens.Column(estimate.Input{
		Central: in.grams, Shape: estimate.Lognormal, SD: sd,
		Stream: w.ens.Stream(name, in.profile.Food.ID.String()),
	})
	w.ens.Journal.Write(estimate.Tables, name+" of "+in.profile.Food.ID.String(), each)
	for d := range col {
		col[d] *= each[d]
	}
	return col
}
