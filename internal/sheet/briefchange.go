package sheet

import (
	"context"
	"errors"
	"math"

	"sipsum/internal/assay"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/taste"
	"sipsum/internal/unit"
)

// Kinds of a change.
const (
	ChangeClaim  = "claim"  // it mends a claim that fails
	ChangeGlass  = "glass"  // the serving fits its glass
	ChangeNotice = "notice" // the least that a judge notices
)

// Change is one written amount that is worth writing otherwise, as a run has shown.
type Change struct {
	Kind     string
	Path     string // of the line
	Of       string // what it pours
	From, To float64
	Unit     string
	What     string // what it does, in words
	Short    string // in fewer
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

// Propose looks for the one change of a written amount that is worth making: the smallest that mends a
// failing claim, else a glass that overflows, else the smallest of a line of the build that a judge
// notices. What no run bears out is not proposed.
func Propose(ctx context.Context, s *Sheet, again Again) error {
	p := &proposer{ctx: ctx, s: s, again: again, runs: int(unit.LimitOf("runs for the change of a brief", "").High), tried: map[string]*assay.Assay{}, tastes: map[*assay.Assay]taste.Profile{}}
	base, err := p.run(nil)
	if err != nil {
		return err
	}
	p.base = base
	for _, find := range []func() (*Change, error){p.mendClaim, p.mendGlass, p.notice} {
		c, err := find()
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
func (p *proposer) change(kind string, line drink.Line, b *borne) *Change {
	return &Change{
		Kind: kind, Path: line.Path, Of: p.pours(line), From: line.Amount.Number, To: b.to, Unit: line.Amount.Measure.Name,
		Effects: effects(p.s.Assay, b.after),
	}
}

// pours names what a line pours as a bar does.
func (p *proposer) pours(line drink.Line) string {
	words := wordsOf(p.s.Assay.Serving)
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

// overflows reports whether a serving overflows its glass, and by how many ml it does.
func overflows(a *assay.Assay) (by float64, is bool) {
	if a.Drink.Glass == nil {
		return 0, false
	}
	by = a.Volume.Mean - a.Drink.Glass.Base()
	return by, by > 0
}

// fits reports whether a serving fits its glass.
func fits(a *assay.Assay) bool {
	_, over := overflows(a)
	return !over
}

// mendGlass finds the smallest change with which the serving fits its glass.
func (p *proposer) mendGlass() (*Change, error) {
	if fits(p.s.Assay) || fits(p.base) {
		return nil, nil
	}
	moves, err := p.moves(p.written(p.s.Assay.Drink.Build), []goal{func(_, a *assay.Assay) (float64, bool) {
		by, _ := overflows(a)
		return -by, true
	}})
	if err != nil {
		return nil, err
	}
	for _, m := range moves {
		b, err := p.reach(m, proof{holds: fits})
		if err != nil {
			return nil, err
		}
		if b != nil {
			c := p.change(ChangeGlass, m.line, b)
			c.What = "it fits the glass of " + b.after.Drink.Glass.String()
			c.Short = c.What
			return c, nil
		}
	}
	return nil, nil
}
