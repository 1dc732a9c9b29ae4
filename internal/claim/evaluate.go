package claim

import (
	"errors"
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// evaluation is one evaluation of a claim.
type evaluation struct {
	claim *Claim
	env   Env
	fixed map[string]float64 // by gap: the share of its most that is taken; the others are open
	gaps  []Gap              // of the figures met, each once
	shown span               // the first figure met, for people
	told  bool               // it has been met
	blind bool               // nothing is known of something in it
	void  string             // it divides by this, of which there is surely none at central values
}

// Outcome is a claim evaluated.
type Outcome struct {
	Logic     Logic   // what it is whatever the drink
	Sure, May float64 // the share of the draws in which it holds with the unknown at the ends that hurt and that help
	Margin    []float64
	Figure    [2][]float64 // the first figure of the claim: with the unknown at its least and at its most; nil: nothing is known of it
	Gaps      []Gap
	Void      string    // it divides by this, and there is none: it has no value; empty: it does not
	Holds     [2][]bool // by draw, the central value first: surely, and possibly; one for all, or as many as all its figures have

	central [2]bool // at central values: sure, may
}

// Evaluate evaluates a claim. fixed sets unknowns to a share of their most (nil: all are open).
// An error is a *fail.Error at its place in the expression.
func (c *Claim) Evaluate(env Env, fixed map[string]float64) (Outcome, error) {
	e := &evaluation{claim: c, env: env, fixed: fixed}
	j, err := e.truth(c.truth)
	if err != nil {
		return Outcome{}, err
	}
	if e.blind {
		e.shown = span{}
	}
	if c.logic != Open { // nothing unknown decides it
		is := make([]bool, len(j.sure))
		for d := range is {
			is[d] = c.logic == Always
		}
		j.sure, j.may, e.gaps = is, is, nil
	}
	return Outcome{
		Logic: c.logic, Sure: holding(j.sure), May: holding(j.may), Margin: j.margin.low,
		Figure: [2][]float64{e.shown.low, e.shown.high}, Gaps: e.gaps, Void: e.void,
		Holds: [2][]bool{j.sure, j.may}, central: [2]bool{j.sure[0], j.may[0]},
	}, nil
}

// Central tells whether a claim holds at central values, with the unknown at the end that hurts.
func (o Outcome) Central() bool { return o.central[0] }

// AtCentre tells of the central values whether a claim is sure, and whether it may hold.
func (o Outcome) AtCentre() (sure, may bool) { return o.central[0], o.central[1] }

// holding is the share of the draws in which something is so.
func holding(col []bool) float64 {
	draws := col[1:]
	if len(draws) == 0 {
		draws = col
	}
	n := 0
	for _, is := range draws {
		if is {
			n++
		}
	}
	return float64(n) / float64(len(draws))
}

func (e *evaluation) truth(t truth) (judged, error) {
	switch t := t.(type) {
	case comparison:
		return e.compare(t)
	case contained:
		return e.contains(t)
	case denial:
		j, err := e.truth(t.a)
		if err != nil {
			return judged{}, err
		}
		return j.not(), nil
	case joined:
		a, err := e.truth(t.a)
		if err != nil {
			return judged{}, err
		}
		b, err := e.truth(t.b)
		if err != nil {
			return judged{}, err
		}
		return a.with(b, t.both), nil
	}
	panic("claim: no such truth")
}

func (e *evaluation) compare(c comparison) (judged, error) {
	spans := make([]span, len(c.terms))
	for i, q := range c.terms {
		var err error
		if spans[i], err = e.quantity(q); err != nil {
			return judged{}, err
		}
	}
	var all judged
	for i, order := range c.orders {
		a, b := spans[i], spans[i+1]
		if order[0] == '>' {
			a, b = b, a
		}
		j := under(a, b, len(order) == 1)
		if i > 0 {
			j = all.with(j, true)
		}
		all = j
	}
	return all, nil
}

// contains is never denied: what nobody has declared may be there all the same.
func (e *evaluation) contains(c contained) (judged, error) {
	is, why, err := e.env.Contains(c.allergen)
	if err != nil {
		return judged{}, e.placed(err, c.at)
	}
	j := judged{[]bool{is}, []bool{true}, exactly(1)}
	if !is {
		e.gap(why)
		j.margin = span{[]float64{-1}, []float64{1}}
	}
	return j, nil
}

func (e *evaluation) quantity(q quantity) (span, error) {
	switch q := q.(type) {
	case literal:
		return exactly(q.value), nil
	case figure:
		s, err := q.function.eval(e, q)
		if !e.told {
			e.shown, e.told = s, true
		}
		return s, err
	case arithmetic:
		a, err := e.quantity(q.a)
		if err != nil {
			return span{}, err
		}
		b, err := e.quantity(q.b)
		if err != nil {
			return span{}, err
		}
		if q.sign == "/" {
			e.divides(b, (&Goal{of: q.b}).Words())
		}
		return map[string]func(a, b span) span{"+": plus, "-": minus, "*": times, "/": over}[q.sign](a, b), nil
	}
	panic("claim: no such figure")
}

// divides notes by what nothing can be divided.
func (e *evaluation) divides(by span, words string) {
	if by.low[0] == 0 && by.high[0] == 0 {
		e.void = words
	}
}

// placed gives an error of the drink its place in the expression.
func (e *evaluation) placed(err error, at int) error {
	var f *fail.Error
	if errors.As(err, &f) && f.Faults[0].Place == (fail.Place{}) {
		return fail.At(f.Exit, e.claim.at(at), f.Faults[0].What, f.Faults[0].Do)
	}
	return err
}

func (e *evaluation) gap(g Gap) {
	for _, x := range e.gaps {
		if x.Key == g.Key {
			return
		}
	}
	e.gaps = append(e.gaps, g)
}

// open makes a span of a figure: what is fixed is there in both ends.
func (e *evaluation) open(f Figure) span {
	e.blind = e.blind || f.Unknown && !e.told
	s := span{f.Known, f.Known}
	add := func(col, most []float64, share float64) []float64 {
		return by(col, most, func(x, m float64) float64 {
			if share == 0 {
				return x
			}
			return x + share*m
		})
	}
	for _, g := range f.Gaps {
		e.gap(g)
		if share, ok := e.fixed[g.Key]; ok {
			whole := s.certain()
			s.low = add(s.low, g.Most, share)
			if s.high = add(s.high, g.Most, share); whole {
				s.high = s.low
			}
			continue
		}
		s.high = add(s.high, g.Most, 1)
	}
	return s
}

// amount gives a figure of the drink as a span, at a place of the expression.
func (e *evaluation) amount(c *constituent.Constituent, of Part, at int) (span, error) {
	f, err := e.env.Amount(c, of)
	if err != nil {
		return span{}, e.placed(err, at)
	}
	return e.open(f), nil
}

func (e *evaluation) serving(f figure) (span, error) {
	return e.amount(f.tags[0], f.part, f.spot())
}

// rank is a place among foods.
func (e *evaluation) rank(f figure) (span, error) {
	of, err := e.env.Rank(f.tags[0], f.food)
	if err != nil {
		return span{}, e.placed(err, f.partAt)
	}
	return e.open(of), nil
}

// spot is where a figure is wrong if its names are: at its part.
func (f figure) spot() int {
	if f.part.Name != "" {
		return f.partAt
	}
	return f.at
}

func (e *evaluation) per100g(f figure) (span, error)  { return e.per(f, Mass) }
func (e *evaluation) per100ml(f figure) (span, error) { return e.per(f, Volume) }

func (e *evaluation) per(f figure, size Property) (span, error) {
	of, err := e.amount(f.tags[0], f.part, f.at)
	if err != nil {
		return span{}, err
	}
	by, err := property(size)(e, f)
	if err != nil {
		return span{}, err
	}
	return times(exactly(unit.Hundred), over(of, by)), nil
}

func (e *evaluation) share(f figure) (span, error) {
	own, err := e.amount(f.tags[0], f.part, f.spot())
	if err != nil {
		return span{}, err
	}
	others := f.part
	others.Rest = true
	rest, err := e.amount(f.tags[0], others, f.spot())
	if err != nil {
		return span{}, err
	}
	return part(own, rest), nil
}

func (e *evaluation) ratio(f figure) (span, error) {
	a, err := e.amount(f.tags[0], Part{}, f.at)
	if err != nil {
		return span{}, err
	}
	b, err := e.amount(f.tags[1], Part{}, f.at)
	if err != nil {
		return span{}, err
	}
	e.divides(b, f.tags[1].Words())
	return joinedBy(a, b, func(x, y float64) float64 {
		if x <= 0 {
			return 0
		}
		if math.IsInf(y, 1) {
			return 0
		}
		return x / y
	}, true), nil
}

// property evaluates a figure of the liquid.
func property(p Property) func(*evaluation, figure) (span, error) {
	return func(e *evaluation, f figure) (span, error) {
		of, err := e.env.Property(p)
		if err != nil {
			return span{}, e.placed(err, f.at)
		}
		return e.open(of), nil
	}
}
