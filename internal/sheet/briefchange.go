package sheet

import (
	"cmp"
	"context"
	"errors"
	"math"
	"slices"
	"strconv"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
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
	p := &proposer{ctx: ctx, s: s, again: again, runs: int(unit.LimitOf("runs for the change of a brief", "").High), tried: map[string]*assay.Assay{}}
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

// errNoMoreRuns ends a search that takes too many runs.
var errNoMoreRuns = errors.New("too many runs")

// proposer looks for a change.
type proposer struct {
	ctx   context.Context
	s     *Sheet
	again Again
	runs  int // that are left
	base  *assay.Assay
	tried map[string]*assay.Assay // by line: with a tenth more of it
}

// run calculates the drink at central values; nil: with these amounts it cannot be made.
func (p *proposer) run(other amount.Amounts) (*assay.Assay, error) {
	if p.runs == 0 {
		return nil, errNoMoreRuns
	}
	p.runs--
	a, err := p.again.Central.Run(p.ctx, other, assay.Want{Chemistry: true, Draws: true})
	if err != nil && p.ctx.Err() == nil && other != nil {
		return nil, nil
	}
	return a, err
}

// goal is what a change is for: a number that is below zero as written and must not be. ok is false
// where nobody can tell.
type goal func(*assay.Assay) (x float64, ok bool)

// move is a line with the factor that its amount wants for a goal, by its slope.
type move struct {
	line   drink.Line
	goal   goal
	factor float64 // natural logarithm
	slope  float64 // of the goal, by the logarithm of the amount
	what   int     // which of the goals
}

// probe is by how much more of an amount its effect is told.
const probe = 1.1

// moves ranks lines by how little of a change reaches one of some goals.
func (p *proposer) moves(lines []drink.Line, goals []goal) ([]move, error) {
	ends := unit.LimitOf("change of a written amount", "")
	var list []move
	for _, line := range lines {
		a, err := p.with(line, probe)
		if err != nil {
			return nil, err
		}
		for i, g := range goals {
			before, ok := g(p.base)
			if a == nil || !ok || !(before < 0) {
				continue
			}
			after, ok := g(a)
			slope := (after - before) / math.Log(probe)
			factor := -before / slope
			if ok && !math.IsNaN(factor) && factor >= math.Log(ends.Low) && factor <= math.Log(ends.High) {
				list = append(list, move{line, g, factor, slope, i})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b move) int { return cmp.Compare(math.Abs(a.factor), math.Abs(b.factor)) })
	return list, nil
}

// with runs the drink with a factor more of a line; it is remembered.
func (p *proposer) with(line drink.Line, factor float64) (*assay.Assay, error) {
	if a, ok := p.tried[line.Path]; ok {
		return a, nil
	}
	a, err := p.run(p.amounts(line, line.Amount.Number*factor))
	p.tried[line.Path] = a
	return a, err
}

func (p *proposer) amounts(line drink.Line, number float64) amount.Amounts {
	other := line.Amount
	other.Number = number
	return amount.Amounts{line.Path: other}
}

// reach finds the least amount, as the bar's scale can weigh it, at which a run bears a move out: by
// its slope first, then between the last amount that was too little and the least that was enough.
func (p *proposer) reach(m move, borne func(*assay.Assay, amount.Amounts) (bool, error)) (to float64, after *assay.Assay, err error) {
	const most = 6
	type point struct{ factor, x float64 }
	short, _ := m.goal(p.base)
	little, enough, written := point{0, short}, point{}, m.line.Amount.Number
	for factor, try := m.factor, 0; try < most; try++ {
		number := p.weighed(m.line, written*math.Exp(factor))
		if number <= 0 || number == written || number == to {
			break
		}
		other := p.amounts(m.line, number)
		a, err := p.run(other)
		if err != nil {
			return 0, nil, err
		}
		if a == nil {
			break
		}
		x, ok := m.goal(a)
		if !ok {
			break
		}
		if here := (point{math.Log(number / written), x}); x < 0 {
			little = here
		} else {
			ok, err := borne(a, other)
			if err != nil {
				return 0, nil, err
			}
			if !ok {
				break
			}
			enough, to, after = here, number, a
		}
		if after == nil {
			factor = little.factor - little.x/m.slope
		} else {
			factor = little.factor - little.x*(enough.factor-little.factor)/(enough.x-little.x)
		}
	}
	return to, after, nil
}

// weighed rounds an amount to what the bar can weigh or measure, away from what is written.
func (p *proposer) weighed(line drink.Line, number float64) float64 {
	step := line.Amount.Resolution() / line.Amount.Measure.Factor
	if scale := p.s.Assay.Drink.Scale; scale != nil && line.Amount.Measure.Kind == unit.Mass {
		step = scale.Base() / line.Amount.Measure.Factor
	}
	steps := number / step
	if number > line.Amount.Number {
		steps = math.Ceil(steps - unit.Closeness)
	} else {
		steps = math.Floor(steps + unit.Closeness)
	}
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(steps*step, 'g', 12, 64), 64) // 34.1, not 34.10000000000001
	return rounded
}

// written keeps the lines whose amount can be written otherwise.
func (p *proposer) written(lines []drink.Line) []drink.Line {
	known := p.again.Central.Written()
	return slices.DeleteFunc(slices.Clone(lines), func(l drink.Line) bool {
		_, ok := known[l.Path]
		return !ok || l.Portion != "" || l.Counted || l.Amount.Measure.Kind == unit.Share || !(l.Amount.Number > 0)
	})
}

// change tells of a move that a run has borne out.
func (p *proposer) change(kind string, m move, to float64, after *assay.Assay) *Change {
	c := &Change{Kind: kind, Path: m.line.Path, Of: p.pours(m.line), From: m.line.Amount.Number, To: to, Unit: m.line.Amount.Measure.Name}
	c.Effects = p.effects(after)
	return c
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
func (p *proposer) effects(after *assay.Assay) []Effect {
	var list []Effect
	add := func(key, unit string, from, to float64) {
		if !math.IsNaN(from) && !math.IsNaN(to) && from != to {
			list = append(list, Effect{key, unit, from, to})
		}
	}
	grams := func(a *assay.Assay) float64 { return a.Serving.Central(constituent.Sugar) }
	add(string(constituent.Sugar), "g", grams(p.base), grams(after))
	meter := func(a *assay.Assay) float64 {
		if a.Chemistry == nil || a.Chemistry.PHMeter.Why != "" || a.Chemistry.PHMeter.Unit == "" {
			return math.NaN()
		}
		return a.Chemistry.PHMeter.Mean
	}
	add("ph", "", meter(p.base), meter(after))
	add("volume", "ml", p.base.Volume.Mean, after.Volume.Mean)
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

// fits reports whether a serving with other amounts fits its glass: at central values, and as the
// draws have it, which know what was read.
func (p *proposer) fits(a *assay.Assay, other amount.Amounts) (bool, error) {
	if _, is := overflows(a); a.Drink.Glass == nil || is {
		return !is, nil
	}
	const near = 0.9 // of a glass: our own bound, no reading moves a volume by a tenth
	if a.Volume.Mean < near*a.Drink.Glass.Base() {
		return true, nil
	}
	drawn, err := p.again.Drawn.Run(p.ctx, other, assay.Want{})
	if err != nil {
		return false, p.ctx.Err()
	}
	_, is := overflows(drawn)
	return !is, nil
}

// mendGlass finds the smallest change with which the serving fits its glass.
func (p *proposer) mendGlass() (*Change, error) {
	if _, is := overflows(p.base); !is {
		return nil, nil
	}
	moves, err := p.moves(p.written(p.s.Assay.Drink.Build), []goal{func(a *assay.Assay) (float64, bool) {
		by, _ := overflows(a)
		return -by, true
	}})
	for _, m := range moves {
		to, a, err := p.reach(m, p.fits)
		if err != nil {
			return nil, err
		}
		if a != nil {
			c := p.change(ChangeGlass, m, to, a)
			c.What = "it fits the glass of " + a.Drink.Glass.String()
			c.Short = c.What
			return c, nil
		}
	}
	return nil, err
}
