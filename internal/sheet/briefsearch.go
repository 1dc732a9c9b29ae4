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
	"sipsum/internal/drink"
	"sipsum/internal/unit"
)

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

// goal is what a change is for: a number that is below zero for the drink as written (before), and
// must not be. ok is false where nobody can tell.
type goal func(before, after *assay.Assay) (x float64, ok bool)

// move is a line with the factor that its amount wants for a goal, by its slope.
type move struct {
	line   drink.Line
	goal   goal
	factor float64 // natural logarithm
	slope  float64 // of the goal, by the logarithm of the amount
}

// probe is by how much more of an amount its effect is told.
const probe = 1.1

// moves ranks lines by how little of a change reaches a goal.
func (p *proposer) moves(lines []drink.Line, g goal) ([]move, error) {
	ends := unit.LimitOf("change of a written amount", "")
	var list []move
	before, ok := g(p.base, p.base)
	if !ok || !(before < 0) {
		return nil, nil
	}
	for _, line := range lines {
		a, err := p.with(line, probe)
		if err != nil {
			return nil, err
		}
		if a == nil {
			continue
		}
		after, ok := g(p.base, a)
		slope := (after - before) / math.Log(probe)
		factor := -before / slope
		if ok && !math.IsNaN(factor) && factor >= math.Log(ends.Low) && factor <= math.Log(ends.High) {
			list = append(list, move{line, g, factor, slope})
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

// bearing is how a move is borne out: by a run with the draws, as far as that is wanted. It knows what
// was read, and whether what is said holds in every draw.
type bearing struct {
	want  assay.Want
	holds func(after *assay.Assay) bool
}

// borne is a move that a run has borne out, with the drink after it.
type borne struct {
	to    float64
	after *assay.Assay
}

// reach finds the least amount, as the bar's scale can weigh it, that a move wants; nil: no run bears
// it out.
func (p *proposer) reach(m move, by bearing) (*borne, error) {
	to, after, err := p.search(m)
	if after == nil || err != nil {
		return nil, err
	}
	const most = 3 // runs with draws: our own bound, they take their time
	for range most {
		drawn, err := p.again.Drawn.Run(p.ctx, p.amounts(m.line, to), by.want)
		if err != nil {
			return nil, p.ctx.Err()
		}
		x, ok := m.goal(p.s.Assay, drawn)
		switch {
		case !ok:
			return nil, nil
		case x >= 0 && by.holds(drawn):
			return &borne{to, drawn}, nil
		}
		short := -x
		if x >= 0 { // it is enough at central values, and not yet in as many draws as it has to be
			const more = 0.2 // of the way: our own bound
			short = more * math.Abs(m.factor*m.slope)
		}
		further := p.weighed(m.line, to*math.Exp(short/m.slope))
		if !p.allowed(m.line, further) || further == to {
			return nil, nil
		}
		to = further
	}
	return nil, nil
}

// search finds the amount at central values: by the slope of a move first, then between the last
// amount that was too little and the least that was enough.
func (p *proposer) search(m move) (to float64, after *assay.Assay, err error) {
	const most = 6
	type point struct{ factor, x float64 }
	short, _ := m.goal(p.base, p.base)
	little, enough, written := point{0, short}, point{}, m.line.Amount.Number
	for factor, try := m.factor, 0; try < most; try++ {
		number := p.weighed(m.line, written*math.Exp(factor))
		if !p.allowed(m.line, number) || number == to {
			break
		}
		a, err := p.run(p.amounts(m.line, number))
		if err != nil {
			return 0, nil, err
		}
		if a == nil {
			break
		}
		x, ok := m.goal(p.base, a)
		if !ok {
			break
		}
		if here := (point{math.Log(number / written), x}); x < 0 {
			little = here
		} else {
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

// allowed reports whether an amount is another than that written, and within what a change may be.
func (p *proposer) allowed(line drink.Line, number float64) bool {
	ends, written := unit.LimitOf("change of a written amount", ""), line.Amount.Number
	return number != written && number >= ends.Low*written && number <= ends.High*written
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
