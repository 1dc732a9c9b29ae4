package assay

import (
	"context"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
	"sipsum/internal/unit"
)

// walk follows a drink through the ledger.
type walk struct {
	ctx     context.Context // asked before each step and line: a large drink takes seconds
	drink   *drink.Drink
	names   *resolved
	amounts amounts
	columns *ledger.Columns
	drawer  *ledger.Drawer
	made    map[string]*ledger.Pot // components by name
	inGlass *ledger.Pot            // one serving without its garnish: what is a liquid
	making  string                 // the component that is being made; empty: the drink
	uses    map[string][]use       // of components, by name

	titrations    map[string]*titration          // by the name of their tracer
	titratedFoods map[*food.Profile]*moreAcid    // what their publishers titrated
	calibrations  map[*food.Profile]*calibration // where a published pH counts beside the composition
	brews         map[string]*brewed             // by the name of their tracer
	weighing      *walk                          // see scales
	packs         map[*food.Profile]*packed      // of foods that state their density

	constants map[string][]float64 // of nature, by name: drawn once
	journal   *journal             // nil unless somebody asks why
	samples   []sample             // pots that could be read

	faults   fail.List
	notes    []Note
	readings []Reading
}

func newWalk(ctx context.Context, d *drink.Drink, names *resolved, o Options) *walk {
	n := o.Draws + 1
	columns := ledger.NewColumns(names.profiles, made(d)...)
	w := &walk{
		ctx: ctx, drink: d, names: names,
		amounts: amounts{seed: o.Seed, n: n, scale: d.Scale},
		columns: columns,
		drawer:  ledger.NewDrawer(o.Seed, n, columns),
		made:    map[string]*ledger.Pot{},
		uses:    map[string][]use{},

		titrations:    map[string]*titration{},
		titratedFoods: map[*food.Profile]*moreAcid{},
		calibrations:  map[*food.Profile]*calibration{},
		brews:         map[string]*brewed{},
		packs:         map[*food.Profile]*packed{},

		constants: map[string][]float64{},
	}
	if o.Why != "" || o.Next {
		w.trace()
	}
	w.drawer.Draw(names.profiles)
	return w
}

// trace makes the walk keep the draws of its inputs.
func (w *walk) trace() {
	w.journal = &journal{seen: map[string]bool{}}
	w.amounts.journal = w.journal
	w.drawer.Trace = func(p *food.Profile, c *constituent.Constituent, col []float64) {
		w.journal.write(Tables, c.Name+" of "+p.Food.ID.String(), col)
	}
}

// serve gives one serving: the build and what finishes it, divided among the
// guests, with the garnish that is eaten.
func (w *walk) serve() (*ledger.Pot, error) {
	pot := ledger.New(w.columns, w.amounts.n)
	w.pour(pot, w.drink.Build)
	if err := w.ctx.Err(); err != nil {
		return nil, err
	}
	w.steps(pot, w.drink.Finish, nil)
	w.offer("", pot, lastReadings(nil, w.drink.Finish))
	w.inGlass = pot
	if slices.ContainsFunc(w.drink.Garnish, eaten) { // is eaten, and does not dissolve
		w.inGlass = copyOf(pot, w.columns)
		w.pour(pot, w.drink.Garnish)
	}
	if err := w.ctx.Err(); err != nil {
		return nil, err
	}
	if err := w.faults.Err(fail.Wrong); err != nil {
		return nil, err
	}
	share := make([]float64, w.amounts.n)
	fill(share, 1/float64(w.drink.Serves))
	pot.Scale(share)
	if w.inGlass != pot {
		w.inGlass.Scale(share)
	}
	return pot, nil
}

// component makes a component once.
func (w *walk) component(c *drink.Component) *ledger.Pot {
	if pot, ok := w.made[c.Name]; ok {
		return pot
	}
	outer := w.making
	w.making = c.Name
	pot := ledger.New(w.columns, w.amounts.n)
	w.pour(pot, c.Ingredients)
	if w.ctx.Err() != nil {
		return pot
	}
	w.steps(pot, c.Steps, c.Measured)
	w.keep(c, pot)
	w.offer(c.Name, pot, lastReadings(c.Measured, c.Steps))
	w.made[c.Name] = pot
	w.making = outer
	return pot
}

// pour adds lines to a pot, without a garnish that is not eaten. Shares (p %) are of the
// mass of the same list's other lines.
func (w *walk) pour(pot *ledger.Pot, lines []drink.Line) {
	var columns [][]float64
	absolute := make([]float64, w.amounts.n)
	for _, line := range lines {
		in := w.names.lines[line.Path]
		var grams []float64
		switch {
		case isShare(line):
		case in.component != nil:
			grams = w.componentGrams(in)
		default:
			grams = w.amounts.grams(in)
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
		pot.Pour(in.profile, w.drawer.PerGram(in.profile), grams, in.line.Path)
		w.calibrate(pot, grams)
		return
	}
	from := w.component(in.component)
	factor := from.Mass()
	if factor[0] <= 0 {
		w.faults.Add(in.line.Place, "give it ingredients", "component %s is empty", quote(in.component.Name))
		return
	}
	for d := range factor {
		if factor[d] > 0 {
			factor[d] = grams[d] / factor[d]
		}
	}
	w.uses[in.component.Name] = append(w.uses[in.component.Name], use{w.making, factor})
	pot.Mix(from, factor, in.component.Name)
}

// componentGrams gives the mass of a component's line; a volume takes the
// density that its composition gives.
func (w *walk) componentGrams(in ingredient) []float64 {
	col := w.amounts.column(in.line.Amount, in.line.Path)
	if in.line.Amount.Measure.Kind != unit.Volume {
		return col
	}
	pot := w.component(in.component)
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
		Seed: w.amounts.seed, N: w.amounts.n, Path: path,
		Trace: func(name string, col []float64) { w.journal.write(Steps, path+": "+name, col) },
	})
	if err != nil {
		w.faults.Join(step.At(), err)
		return
	}
	if out.Brewed {
		w.calibrateBrew(pot, path)
	}
	if out.Parted != nil {
		w.calibrateParted(pot, out.Parted, path)
	}
	for _, note := range out.Notes {
		w.notes = append(w.notes, Note{Kind: "step", Text: path + ": " + note})
	}
}
