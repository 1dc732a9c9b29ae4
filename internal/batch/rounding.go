package batch

import (
	"context"
	"math"
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// Rounding is what the amounts of the card and the scale's steps move, whether each serve is weighed
// by itself or all at once.
type Rounding struct {
	Figure *constituent.Constituent // that moves most; nil: none does
	Share  float64                  // by how much, of itself
	PH     float64
	Undone string // why the drink cannot be made with what the bar's scale shows; "": it can
}

// compare notes what of a serving moved.
func (r *Rounding) compare(exact, rounded *assay.Assay) {
	for _, f := range exact.PerServing {
		g, ok := rounded.PerServing.Find(f.Constituent.ID)
		if !ok || f.Mean == 0 || math.IsNaN(f.Mean) {
			continue
		}
		if share := math.Abs(g.Mean/f.Mean - 1); share > r.Share+unit.Closeness {
			r.Figure, r.Share = f.Constituent, share
		}
	}
	if a, b := exact.Chemistry, rounded.Chemistry; a != nil && b != nil && a.PH.Why == "" && b.PH.Why == "" {
		r.PH = max(r.PH, math.Abs(a.PH.Mean-b.PH.Mean))
	}
}

// settler settles with which digits the amounts of a batch are written.
type settler struct {
	*maker
	exact *assay.Assay // the drink as it is written
}

// rounded gives the amounts that a run can change as they are weighed, by path, as amounts of the
// drink as its file writes it: of the build each serve weighed by itself, or all in one round.
func (m settler) rounded(as func(Weighed) unit.Amount, round bool) amount.Amounts {
	other, written := amount.Amounts{}, m.Central.Written()
	add := func(w Weighed) {
		if _, asked := written[w.Path]; asked && w.measured() {
			other[w.Path] = times(as(w), w.file)
		}
	}
	for _, w := range m.out.all() {
		add(*w)
	}
	if round {
		for _, p := range m.out.Build {
			add(p.All)
		}
	}
	return other
}

// written is an amount as the card writes it.
func written(w Weighed) unit.Amount { return w.Rounded }

// run makes the drink with what is weighed: each serve by itself, and all in one round.
func (m settler) run(ctx context.Context, as func(Weighed) unit.Amount) ([]*assay.Assay, error) {
	var list []*assay.Assay
	for _, round := range []bool{false, true} {
		a, err := m.Central.Run(ctx, m.rounded(as, round), assay.Want{Chemistry: true})
		if err != nil {
			return nil, err
		}
		list = append(list, a)
	}
	return list, nil
}

// short tells how many grams the pots of some runs fall short of what is taken of them. A run knows
// nothing of readings: what they make of a pot is a share of what is expected.
func (m settler) short(runs []*assay.Assay) map[string]float64 {
	missing := map[string]float64{}
	for _, a := range runs {
		makes, takes := map[string]float64{}, map[string]float64{}
		for _, y := range a.Yields {
			makes[y.Component] = y.Out
			for _, p := range y.Poured {
				if in := m.Recipe.Lines[p.Path]; in.Component != nil {
					takes[in.Component.Name] += p.Grams * m.times[y.Component]
				}
			}
		}
		for _, y := range m.exact.Yields {
			made := makes[y.Component] / y.Out * m.yields[y.Component].Out * m.times[y.Component]
			if lacks := takes[y.Component] - made; y.Component != "" && lacks > unit.Closeness*made {
				missing[y.Component] = max(missing[y.Component], lacks)
			}
		}
	}
	return missing
}

// tries is how often pots are enlarged until rounding leaves none short.
const tries = 6

// enough makes of every pot as much as is taken of it when all is rounded, and no more.
func (m settler) enough(ctx context.Context) error {
	for range tries {
		runs, err := m.run(ctx, written)
		if err != nil {
			return err
		}
		missing := m.short(runs)
		if len(missing) == 0 {
			return nil
		}
		for name, grams := range missing {
			m.spare[name] += grams
		}
		m.worked()
	}
	return nil
}

// settle writes each amount with the digits that weighing it wants: finer than the scale where a serving
// wants it, and in pots no finer than a tenth of what it may be off, as long as no pot falls short by
// it. Then it is known what is bought, and what all the rounding moves.
func (m settler) settle(ctx context.Context) error {
	for _, w := range m.out.all() {
		if w.Step.Base > 0 {
			w.Rounded = m.wanted(*w, w.Amount)
		}
	}
	for i := range m.out.Build {
		p := &m.out.Build[i]
		if p.Step.Base > 0 {
			p.All.Rounded = m.wanted(p.Weighed, p.All.Amount)
		}
	}
	finest := map[*Weighed]unit.Amount{}
	for i := range m.out.Pots {
		for _, w := range m.out.Pots[i].all() {
			finest[w] = w.Rounded
			if step := w.Step.Base / ten; step > m.step(w.Amount) {
				w.Rounded = byStep(w.Amount, step)
			}
		}
	}
	var runs []*assay.Assay
	for range len(m.out.Pots) + 1 {
		var err error
		missing := map[string]float64{}
		if runs, err = m.run(ctx, written); err == nil {
			missing = m.short(runs)
		} else if fail.ExitCode(err) != fail.Wrong {
			return err
		}
		if err == nil && len(missing) == 0 {
			break
		}
		for i := range m.out.Pots {
			p := &m.out.Pots[i]
			if _, lacks := missing[p.Name]; lacks || err != nil {
				for _, w := range p.all() {
					w.Rounded = finest[w]
				}
			}
		}
	}
	if runs == nil {
		var err error
		if runs, err = m.run(ctx, written); err != nil {
			return err
		}
	}
	m.shop(runs)
	shown, err := m.run(ctx, m.shown)
	switch {
	case fail.ExitCode(err) == fail.Wrong:
		m.out.Rounding.Undone = err.Error()
	case err != nil:
		return err
	}
	for _, a := range slices.Concat(runs, shown) {
		m.out.Rounding.compare(m.exact, a)
	}
	return nil
}

// wanted rounds an amount no coarser than it may be weighed: as much of it as a step is of what was tried.
func (m settler) wanted(tried Weighed, a unit.Amount) unit.Amount {
	step := fine(a, m.step(a))
	most := tried.Step.Base / 2 * a.Base() / tried.Amount.Base()
	for most > 0 && math.Abs(byStep(a, step).Base()-a.Base()) > most {
		step /= ten
	}
	return byStep(a, step)
}

// shown is what the bar's scale shows of what the card writes: perhaps nothing.
func (m settler) shown(w Weighed) unit.Amount {
	if !m.scaled(w.Rounded) {
		return w.Rounded
	}
	return byStep(w.Rounded, m.Recipe.Drink.Scale.Base())
}
