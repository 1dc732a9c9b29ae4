package sheet

import (
	"context"
	"errors"
	"math"

	"sipsum/internal/assay"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/unit"
)

// Kinds of a change: what it mends.
const (
	ChangeClaim = "claim" // a claim that fails, or that something unknown decides
	ChangeRule  = "rule"  // a house rule that the drink fails, or of which nobody can tell
	ChangeGlass = "glass" // the serving overflows its glass
)

// Change is one written amount that mends something if it is written otherwise, as a run has shown.
type Change struct {
	Kind     string
	Path     string // of the line
	Of       string // what it pours
	From, To float64
	Unit     string
	Mends    string    // what it mends, as it is spoken of
	What     string    // what it does, in words
	Short    string    // in fewer
	Breaks   []string  // what holds as the drink is written, and then does not
	Shrinks  []Shrinks // what it makes smaller by more than goes without saying
	Effects  []Effect
}

// Effect is what a change does to a figure of a serving, at central values.
type Effect struct {
	Key, Unit string
	From, To  float64
}

// Again calculates a drink with other amounts: at central values, and with its draws.
type Again struct {
	Central, Drawn *assay.Plan
}

// Propose looks for the one change of a written amount that mends something: a claim that fails, a house
// rule, a glass that overflows, in this order, then what something unknown decides. Where nothing is to be
// mended nothing is proposed, nor what no run bears out.
func Propose(ctx context.Context, s *Sheet, again Again) error {
	p := &proposer{ctx: ctx, s: s, again: again, runs: int(unit.LimitOf("runs for the change of a brief", "").High), tried: map[string]*assay.Assay{}}
	mend, keep := p.wishes()
	if len(mend) == 0 {
		return nil
	}
	base, err := p.run(nil)
	if err != nil {
		return err
	}
	p.base = base
	for _, w := range mend {
		c, err := p.mend(w, keep)
		switch {
		case errors.Is(err, errNoMoreRuns):
			return nil
		case err != nil:
			return err
		case c != nil:
			s.Change = c
			return nil
		}
	}
	return nil
}

// change tells of a move that a run has borne out.
func (p *proposer) change(w wish, line drink.Line, b *borne, keep []wish) *Change {
	c := &Change{
		Kind: w.kind, Path: line.Path, Of: p.pours(line), From: line.Amount.Number, To: b.to, Unit: line.Amount.Measure.Name, Mends: w.quote,
		Breaks: broken(keep, b.after), Shrinks: shrunk(p.s.Assay, b.after), Effects: effects(p.s.Assay, b.after),
	}
	long, short := c.harmWords()
	what := w.words(b.after)
	c.What, c.Short = what+long, what+short
	return c
}

// pours names what a line pours as a bar does.
func (p *proposer) pours(line drink.Line) string {
	words := p.s.words()
	for _, r := range p.s.Assay.Serving.Rows {
		if r.Line == line.Path {
			return words[r.Profile.Food.ID]
		}
	}
	return clean.Name(line.Food)
}

// effects are what a change does to the figures that a brief leads with.
func effects(before, after *assay.Assay) []Effect {
	var list []Effect
	add := func(key, unit string, from, to float64) {
		if !math.IsNaN(from) && !math.IsNaN(to) && from != to {
			list = append(list, Effect{key, unit, from, to})
		}
	}
	grams := func(a *assay.Assay) float64 { return a.Serving.Central(constituent.Sugar) }
	add(string(constituent.Sugar), "g", grams(before), grams(after))
	meter := func(a *assay.Assay) float64 {
		if a.Chemistry == nil || a.Chemistry.PHMeter.Why != "" || a.Chemistry.PHMeter.Unit == "" {
			return math.NaN()
		}
		return a.Chemistry.PHMeter.Mean
	}
	add("ph", "", meter(before), meter(after))
	add("volume", "ml", before.Volume.Mean, after.Volume.Mean)
	return list
}

// fits reports whether a serving fits its glass.
func fits(a *assay.Assay) bool { return a.Drink.Glass == nil || a.Filled.Mean <= a.Drink.Glass.Base() }
