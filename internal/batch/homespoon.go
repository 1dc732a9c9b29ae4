package batch

import (
	"context"
	"math"
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/taste"
	"sipsum/internal/unit"
)

// Why a line is weighed at home.
const (
	noSpoonful = "no table says what a spoon of it weighs"
	tooCoarse  = "no spoon comes near enough to it"
)

// spooning is a line with the spoon that comes nearest.
type spooning struct {
	at    int // in Lines
	grams unit.Amount
}

// spoon measures with cups and spoons what these measure well enough: alone, and all together, a
// serving stays within its bands. What leaves one is weighed.
func (c *cook) spoon(ctx context.Context) error {
	s := newBands(c.now)
	want := s.want
	want.Chemistry = true
	a, err := c.now.Central.Run(ctx, nil, want)
	if err != nil {
		return err
	}
	was := s.read(a)
	s.hold(was, taste.Of(a.Glass()))
	var tried []spooning
	for _, p := range c.lines(c.now.Recipe.Drink) {
		line, with, ok := c.measure(p, a)
		if ok {
			name, out, err := c.tried(ctx, s, was, []spooning{with}, line.Path)
			if err != nil {
				return err
			}
			if out {
				line.To, line.Weigh = with.of(c.now, p.line.Path), name
				ok = false
			}
		}
		c.Home.Lines = append(c.Home.Lines, line)
		if ok {
			with.at = len(c.Home.Lines) - 1
			tried = append(tried, with)
		}
	}
	for len(tried) > 0 { // single ones may each keep a band that all leave together
		name, out, err := c.tried(ctx, s, was, tried, "")
		if err != nil {
			return err
		}
		if !out {
			break
		}
		worst := 0
		for i := range tried {
			if c.off(tried[i]) > c.off(tried[worst]) {
				worst = i
			}
		}
		l := &c.Home.Lines[tried[worst].at]
		l.To, l.Weigh = tried[worst].of(c.now, l.Path), name
		tried = append(tried[:worst], tried[worst+1:]...)
	}
	return c.measured(ctx)
}

// off is by how much a spoon is off, of what it measures.
func (c *cook) off(w spooning) float64 {
	l := c.Home.Lines[w.at]
	return math.Abs(w.grams.Base()/l.Exact - 1)
}

// of is an amount as the scale weighs it.
func (w spooning) of(b Bench, path string) unit.Amount {
	m := maker{Bench: b}
	a := b.Central.Written()[path]
	return m.round(a)
}

// tried runs the drink with lines as spoons measure them, and tells which band it leaves.
func (c *cook) tried(ctx context.Context, s *bands, was reading, list []spooning, path string) (string, bool, error) {
	other := amount.Amounts{}
	for _, w := range list {
		at := path
		if at == "" {
			at = c.Home.Lines[w.at].Path
		}
		other[at] = w.grams
	}
	a, err := c.now.Central.Run(ctx, other, s.want)
	if fail.ExitCode(err) == fail.Wrong {
		return "a step cannot be done with it", true, nil
	}
	if err != nil {
		return "", false, err
	}
	name, out := s.leaves(s.read(a), was, 0)
	return name, out, nil
}

// measure gives a line with the spoon or cup that comes near enough; ok: there is one.
func (c *cook) measure(p placed, a *assay.Assay) (line Spooned, with spooning, ok bool) {
	in := c.now.Recipe.Lines[p.line.Path]
	written, follows := c.now.Central.Written()[p.line.Path]
	line = Spooned{Path: p.line.Path, Pot: p.pot, To: written, Exact: poured(a, p.line.Path)}
	line.Grams = line.Exact
	per := 0.0
	if in.Component != nil {
		line.Name = in.Component.Name
		per = densityOf(a, line.Name)
	} else {
		f := in.Profile.Food
		line.Name, per = c.now.Recipe.Called[c.now.Recipe.PartOf(p.line)], perMillilitre(f)
		line.Buy = atHome().bought[f.ID.String()]
	}
	switch {
	case p.line.Portion != "":
		line.Count, line.Of = p.line.Count, in.Line.Portion
		return line, with, false
	case !follows || written.Measure.Kind == unit.Share || written.Measure.Spread > 0:
		return line, with, false // a share of others, or measured with a spoon already
	case per == 0:
		line.To, line.Weigh = with.of(c.now, p.line.Path), noSpoonful
		return line, with, false
	}
	grams := line.Exact
	if written.Measure.Kind == unit.Volume {
		grams = written.Base() * per
	}
	spoonful, found := nearest(grams / per)
	if !found {
		line.To, line.Weigh = with.of(c.now, p.line.Path), tooCoarse
		return line, with, false
	}
	line.To = spoonful
	with.grams = written
	with.grams.Number = written.Number * spoonful.Base() * per / grams
	with.grams.Half = 0
	return line, with, true
}

// nearest is the largest spoon or cup that measures a volume near enough, or else the one that comes
// nearest.
func nearest(ml float64) (best unit.Amount, found bool) {
	off := math.Inf(1)
	for _, s := range atHome().spoons {
		step := s.Factor * s.part
		n := math.Round(ml / step)
		if n == 0 {
			continue
		}
		by := math.Abs(n*step/ml - 1)
		if by < off-unit.Closeness {
			off, found = by, true
			best = unit.Amount{Number: n * s.part, Measure: s.Measure, Decimals: decimals(s.part)}
		}
		if by <= limits().share {
			break
		}
	}
	return best, found
}

// measured writes what was found into the text, and what is weighed as the scale shows it.
func (c *cook) measured(ctx context.Context) error {
	other, written := amount.Amounts{}, c.now.Central.Written()
	for _, l := range c.Home.Lines {
		if was, ok := written[l.Path]; ok && l.Of == "" && l.To != was {
			other[l.Path] = l.To
		}
	}
	if err := c.rewrite(ctx, other); err != nil {
		return err
	}
	a, err := c.now.Central.Run(ctx, nil, assay.Want{})
	if err != nil {
		return err
	}
	for i := range c.Home.Lines {
		c.Home.Lines[i].Grams = poured(a, c.Home.Lines[i].Path)
	}
	return nil
}

// poured is what a line weighs in, at central values.
func poured(a *assay.Assay, path string) float64 {
	for _, y := range a.Yields {
		for _, p := range y.Poured {
			if p.Path == path {
				return p.Grams
			}
		}
	}
	return math.NaN()
}

// densityOf is that of a component in its jar, g/ml; 0: nobody knows it.
func densityOf(a *assay.Assay, name string) float64 {
	for _, x := range a.Components {
		if x.House && x.ID.Component == name && x.Chemistry != nil && x.Chemistry.TooDry == "" {
			return x.Chemistry.Density.Mean
		}
	}
	return 0
}

// Moves gives the steps of a component, or of the finish of the drink, with what they bring as it is
// measured at home.
func (h *Home) Moves(pot string) []Move {
	steps := h.Recipe.Drink.Finish
	if c, ok := h.Recipe.Drink.Component(pot); ok {
		steps = c.Steps
	}
	var list []Move
	for _, step := range steps {
		move := Move{Step: step}
		for _, l := range h.Lines {
			if slices.ContainsFunc(step.Lines(), func(of drink.Line) bool { return of.Path == l.Path }) {
				move.Lines = append(move.Lines, Weighed{Path: l.Path, Name: l.Name, Amount: l.To, Rounded: l.To, Count: l.Count, Portion: l.Of, Grams: l.Grams})
			}
		}
		for _, p := range Growing(step) {
			move.Amounts = append(move.Amounts, Weighed{Path: step.StepPath() + "/" + p.Name, Name: p.Name, Amount: *p.Amount, Rounded: *p.Amount, Grams: p.Amount.Base()})
		}
		list = append(list, move)
	}
	return list
}

// Mark is what is left of a component in its jar, in millilitres: a mark on a pot stands for a scale.
// 0: nobody knows its density.
func (h *Home) Mark(a *assay.Assay, pot string) float64 {
	per := densityOf(a, pot)
	for _, y := range a.Yields {
		if y.Component == pot && pot != "" && per > 0 {
			return y.Out / per
		}
	}
	return 0
}
