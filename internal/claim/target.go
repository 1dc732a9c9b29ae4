package claim

import (
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/fail"
)

// Target is what a drink should reach: conditions that hold, or a figure that is least or most.
type Target struct {
	Text       string
	Conditions []*Claim // all of them are to hold; none of a goal
	Goal       *Goal    // nil: it is a condition

	whole *Claim
}

// Goal is a figure that should be as small, or as great, as the conditions allow.
type Goal struct {
	Most bool
	of   quantity
	from *Claim // the expression, for the places of its faults
	unit string // in which what it is held to is written; "" if nothing is
}

// ParseTarget reads a target: a condition, whose parts that must all hold become conditions of
// their own; or "least" or "most" before a figure. An error is a *fail.Error at the character where
// it is wrong.
//
//	target = claim | ( "least" | "most" ) sum .
func ParseTarget(text string, at fail.Place) (*Target, error) {
	t := &Target{Text: text}
	first, _, _ := strings.Cut(strings.TrimSpace(text), " ")
	word := strings.ToLower(first)
	if word != "least" && word != "most" {
		c, err := Parse(text, at)
		if err != nil {
			return nil, err
		}
		t.whole, t.Conditions = c, c.parts()
		return t, nil
	}
	from := strings.Index(text, first) + len(first)
	c := &Claim{Text: text, place: shifted(at, from)}
	q, wrong := c.parseFigure(text[from:])
	if wrong != nil {
		return nil, fail.At(fail.Wrong, c.at(wrong.at), wrong.what, wrong.do)
	}
	c.truth = comparison{terms: []quantity{q}}
	t.Goal = &Goal{Most: word == "most", of: q, from: c}
	return t, nil
}

// parseFigure reads a figure and nothing after it.
func (c *Claim) parseFigure(text string) (quantity, *fault) {
	tokens, wrong := lex(text)
	if wrong != nil {
		return nil, wrong
	}
	p := &parser{tokens: tokens}
	q, wrong := p.figure()
	switch {
	case wrong != nil:
		return nil, wrong
	case p.now().sort != end:
		return nil, p.unexpected("and here it goes on with "+p.now().said(), "a goal is a figure alone: least serving(SUGAR)")
	}
	if _, bare := q.(literal); bare {
		return nil, &fault{q.where(), "a number alone is the same in any drink", "write a figure of the drink: least serving(SUGAR)"}
	}
	return q, nil
}

// parts gives the conditions that must all hold for a claim to hold: each side of an "and", each
// link of a chain. Their margins are lines where the whole's bends.
func (c *Claim) parts() []*Claim {
	var list []*Claim
	var of func(t truth)
	of = func(t truth) {
		switch t := t.(type) {
		case joined:
			if t.both {
				of(t.a)
				of(t.b)
				return
			}
		case comparison:
			for i, order := range t.orders {
				part := *c
				part.truth = comparison{terms: t.terms[i : i+2], orders: []string{order}}
				part.logic = logicOf(part.truth)
				list = append(list, &part)
			}
			return
		}
		part := *c
		part.truth, part.logic = t, logicOf(t)
		list = append(list, &part)
	}
	of(c.truth)
	return list
}

// Values gives the figure of a goal: with what is unknown at its least, and at its most.
func (g *Goal) Values(env Env) (least, most []float64, err error) {
	e := &evaluation{claim: g.from, env: env}
	s, err := e.quantity(g.of)
	return s.low, s.high, err
}

// Void names what a goal divides by of which there is none; empty: it has a value.
func (g *Goal) Void(env Env) (string, error) {
	e := &evaluation{claim: g.from, env: env}
	_, err := e.quantity(g.of)
	return e.void, err
}

// Gaps lists what of a goal nobody knows.
func (g *Goal) Gaps(env Env) ([]Gap, error) {
	e := &evaluation{claim: g.from, env: env}
	_, err := e.quantity(g.of)
	return e.gaps, err
}

// Figure gives the figure for people: nil where nothing at all is known of something in it.
func (g *Goal) Figure(env Env) (least, most []float64, err error) {
	e := &evaluation{claim: g.from, env: env}
	s, err := e.quantity(g.of)
	if err != nil || e.blind {
		return nil, s.high, err
	}
	return s.low, s.high, nil
}

// Constituents lists what a target asks of.
func (t *Target) Constituents() []constituent.ID {
	var ids []constituent.ID
	for _, c := range t.all() {
		ids = append(ids, c.Constituents()...)
	}
	return ids
}

// OfLiquid reports whether a target asks what the drink is as a solution.
func (t *Target) OfLiquid() bool {
	for _, c := range t.all() {
		if c.OfLiquid() {
			return true
		}
	}
	return false
}

func (t *Target) all() []*Claim {
	if t.Goal != nil {
		return []*Claim{t.Goal.from}
	}
	return t.Conditions
}

// Whole is the condition of a target, undivided; nil of a goal.
func (t *Target) Whole() *Claim { return t.whole }

// Strict reports whether a condition does not hold at its limit.
func (c *Claim) Strict() bool {
	cmp, ok := c.truth.(comparison)
	return ok && len(cmp.orders) == 1 && len(cmp.orders[0]) == 1
}
