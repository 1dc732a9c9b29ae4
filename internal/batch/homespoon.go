package batch

import (
	"cmp"
	"context"
	"math"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// Why a line is weighed at home.
const (
	noSpoonful = "no table says what a spoon, a cup or a piece of it weighs, so that only a scale does"
	tooLittle  = "it is less than the least that a spoon measures, so that only a scale does"
	noRoom     = "nobody knows how much room it takes in the pot, so that only a scale does"
	undone     = "with a little less or more of it a later step cannot be done as it is written"
)

// spooning is a line with how it is measured.
type spooning struct {
	at int // in Lines
	measure
}

// judge tells what a serving may be moved by.
type judge struct {
	*bands
	was reading
}

// spoon measures with cups, spoons and pieces what these measure well enough: the worst that their
// steps and hands may be off by, and all roundings together, leave a serving within its bands. What
// leaves one is weighed.
func (c *cook) spoon(ctx context.Context) error {
	j := judge{bands: newBands(c.now)}
	j.want.Volumes = true
	a, err := c.now.Central.Run(ctx, nil, j.want)
	if err != nil {
		return err
	}
	j.was = j.holdHome(a)
	var tried []spooning
	for _, of := range append(c.poured(a), c.marks(a)...) {
		keep, err := c.tell(ctx, j, &of)
		if err != nil {
			return err
		}
		c.Home.Lines = append(c.Home.Lines, of.Spooned)
		c.fills[of.Path] = of.measure
		if keep {
			tried = append(tried, spooning{len(c.Home.Lines) - 1, of.measure})
		}
	}
	if err := c.together(ctx, j, tried); err != nil {
		return err
	}
	c.garnish()
	return c.measured(ctx)
}

// asked is a line with the measure that was found for it; fit: there is one.
type asked struct {
	Spooned
	measure
	fit bool
}

// tell judges a line; keep: it is measured without a scale.
func (c *cook) tell(ctx context.Context, j judge, of *asked) (keep bool, err error) {
	if !of.fit {
		return false, nil
	}
	of.To, of.Count, of.Of = of.to, of.count, of.of
	half := of.step/2 + atHome().worst*of.sd*of.Exact
	for _, sign := range []float64{-1, 1} {
		name, off, err := c.off(ctx, j, amount.Amounts{of.Path: c.grams(of.Path, of.Exact, max(of.Exact+sign*half, of.Exact*percent))})
		if err != nil {
			return false, err
		}
		if name == undone && of.Step { // nobody collects more than comes
			continue
		}
		if name != "" && (of.Weigh == "" || off > of.Off) {
			of.Weigh, of.Off, of.Scale = name, off, c.weighed(of.Spooned)
		}
	}
	return of.Weigh == "", nil
}

// together weighs what single lines may round but all of them may not.
func (c *cook) together(ctx context.Context, j judge, tried []spooning) error {
	for len(tried) > 0 {
		other, worst := amount.Amounts{}, 0
		for i, w := range tried {
			l := c.Home.Lines[w.at]
			other[l.Path] = c.grams(l.Path, l.Exact, w.grams)
			if c.rounds(w) > c.rounds(tried[worst]) {
				worst = i
			}
		}
		name, off, err := c.off(ctx, j, other)
		if err != nil || name == "" {
			return err
		}
		l := &c.Home.Lines[tried[worst].at]
		l.Weigh, l.Off, l.Scale = name, off, c.weighed(*l)
		tried = append(tried[:worst], tried[worst+1:]...)
	}
	return nil
}

// rounds is by how much a spoon is off, of what it measures.
func (c *cook) rounds(w spooning) float64 { return math.Abs(w.grams/c.Home.Lines[w.at].Exact - 1) }

// grams is an amount as it is written, of other grams.
func (c *cook) grams(path string, exact, grams float64) unit.Amount {
	a := c.now.Central.Written()[path]
	a.Number, a.Half, a.Sigma = a.Number*grams/exact, 0, false
	return a
}

// weighed is an amount as the scale shows it, of one brew.
func (c *cook) weighed(l Spooned) unit.Amount {
	m := maker{Bench: c.now}
	return m.round(times(c.now.Central.Written()[l.Path], 1/l.Times))
}

// brews is how often a pot is made.
func (h *Home) brews(pot string) float64 { return cmp.Or(h.Times[pot], 1) }

// off runs the drink with other amounts, and tells the band that it leaves, and how far a taste is off.
func (c *cook) off(ctx context.Context, j judge, other amount.Amounts) (name string, off float64, err error) {
	a, err := c.now.Central.Run(ctx, other, j.want)
	if fail.ExitCode(err) == fail.Wrong {
		return undone, 0, nil
	}
	if err != nil {
		return "", 0, err
	}
	now := j.readHome(a)
	name, out := j.leaves(now, j.was, 0)
	if !out {
		return "", 0, nil
	}
	for _, b := range j.list {
		if b.Name == name && b.Share > 0 && len(now[name]) > 0 {
			off = math.Abs(now[name][0]/j.was[name][0] - 1)
		}
	}
	return name, off, nil
}

// poured gives the lines with the measure of each.
func (c *cook) poured(a *assay.Assay) []asked {
	var list []asked
	for _, p := range c.lines(c.now.Recipe.Drink) {
		list = append(list, c.line(p, a))
	}
	return list
}

// line finds the measure of a line.
func (c *cook) line(p placed, a *assay.Assay) asked {
	in := c.now.Recipe.Lines[p.line.Path]
	written, follows := c.now.Central.Written()[p.line.Path]
	brews := c.brews(p.pot)
	of := asked{Spooned: Spooned{Path: p.line.Path, Pot: p.pot, Later: p.step != "", Times: brews, Exact: pouredOf(a, p.line.Path) / brews}}
	of.Grams = of.Exact
	if in.Component != nil {
		of.Name = in.Component.Name
	} else {
		of.Name = c.now.Recipe.Called[c.now.Recipe.PartOf(p.line)]
		of.Buy = atHome().bought[in.Profile.Food.ID.String()]
	}
	switch {
	case p.line.Portion != "":
		of.Count, of.Of = p.line.Count/brews, in.Line.Portion
		return of
	case !follows || written.Measure.Kind == unit.Share:
		of.To = written
		return of
	case written.Measure.Spread > 0: // measured with a spoon already
		of.To = times(written, 1/brews)
		return of
	}
	known := false
	if in.Component != nil {
		per := densityOf(a, of.Name)
		known = per > 0
		of.measure, of.fit = spooned(per, of.Exact, true)
	} else {
		per, _ := perMillilitre(in.Profile.Food)
		known = per > 0
		of.measure, of.fit = measured(in.Profile.Food, of.Exact)
	}
	if !of.fit {
		of.Weigh, of.Scale = noSpoonful, c.weighed(of.Spooned)
		if known {
			of.Weigh = tooLittle
		}
	}
	return of
}

// measured writes what was found into the text, and what is weighed as the scale shows it.
func (c *cook) measured(ctx context.Context) error {
	other, written := amount.Amounts{}, c.now.Central.Written()
	for i := range c.Home.Lines {
		l := &c.Home.Lines[i]
		was, ok := written[l.Path]
		if !ok || l.Garnish {
			continue
		}
		to := c.found(*l)
		if to.Number > 0 && to != was {
			other[l.Path] = to
		}
		if l.Step && to.Number > 0 {
			l.Grams = to.Base() / l.Times
		}
	}
	if err := c.rewrite(ctx, other); err != nil {
		return err
	}
	a, err := c.now.Central.Run(ctx, nil, assay.Want{Volumes: true})
	if err != nil {
		return err
	}
	for i := range c.Home.Lines {
		if l := &c.Home.Lines[i]; !l.Step && !l.Garnish {
			l.Grams = pouredOf(a, l.Path) / l.Times
		}
	}
	for _, y := range a.Yields {
		if y.Component != "" && y.Volume > 0 {
			c.Home.Makes[y.Component] = y.Volume / c.brews(y.Component)
		}
	}
	return nil
}

// found is a line as the file of the home version writes it, of all brews: a spoon with the spread of
// filling it, what no file says with a spoon in grams with the same.
func (c *cook) found(l Spooned) unit.Amount { return times(once(l, c.fills[l.Path]), l.Times) }

// once is the same of one brew.
func once(l Spooned, m measure) unit.Amount {
	switch {
	case l.Weigh != "":
		return l.Scale
	case m.grams == 0:
		return unit.Amount{} // it stays as it is
	case m.said && !l.Step:
		a := m.to
		a.Half, a.Sigma = rounded(m.sd*a.Number), true
		return a
	}
	return unit.Amount{Number: rounded(m.grams), Half: rounded(m.sd * m.grams), Sigma: true, Measure: gram(), Decimals: decimals(rounded(m.grams))}
}

// rounded keeps three digits.
func rounded(x float64) float64 {
	if x <= 0 {
		return 0
	}
	scale := 1 / lastDigit(x)
	return math.Round(x*scale) / scale
}

// lastDigit is the third digit of a number.
func lastDigit(x float64) float64 {
	const digits = 3
	return math.Pow(ten, math.Floor(math.Log10(x))-digits+1)
}

// pouredOf is what a line weighs in, at central values.
func pouredOf(a *assay.Assay, path string) float64 {
	for _, y := range a.Yields {
		for _, p := range y.Poured {
			if p.Path == path {
				return p.Grams
			}
		}
	}
	return math.NaN()
}

// densityOf is that of a component as it is poured, foam with its bubbles, g/ml, of a run that was asked for volumes; 0: nobody
// knows it.
func densityOf(a *assay.Assay, name string) float64 {
	for _, y := range a.Yields {
		if y.Component == name && name != "" && y.Filled > 0 {
			return y.Out / y.Filled
		}
	}
	return 0
}
