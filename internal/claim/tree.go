package claim

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/fail"
)

// Claim is an expression that has been read and makes sense by itself: names of parts are
// looked for when it is checked.
type Claim struct {
	Text  string
	place fail.Place // of its first character
	truth truth
	terms int
	logic Logic // what it is by its form alone
}

// fault is what is wrong with an expression, at a character of it.
type fault struct {
	at       int
	what, do string
}

// At gives the place of a character of the expression.
func (c *Claim) at(character int) fail.Place { return shifted(c.place, character) }

func shifted(p fail.Place, by int) fail.Place {
	if p.Col > 0 {
		p.Col += by
	}
	return p
}

// quantity is a part of an expression that is a figure.
type quantity interface {
	of() dimension
	where() int
}

// truth is a part of an expression that holds or does not.
type truth interface{ where() int }

type (
	// literal is a number that is written.
	literal struct {
		value float64 // g, ml, kJ, or as it stands
		is    dimension
		bare  bool // written without a unit
		at    int

		text, unit string // as it is written, and its unit
	}
	// figure is a figure of the drink.
	figure struct {
		function *function
		tags     []*constituent.Constituent
		part     Part
		food     string // of a table, whether or not it is in the drink
		partAt   int    // or of the food
		at       int
	}
	// arithmetic joins two figures.
	arithmetic struct {
		sign string
		a, b quantity
		is   dimension
	}
	// comparison holds if each figure stands in its order to the next.
	comparison struct {
		terms  []quantity
		orders []string
	}
	// contained asks for an allergen.
	contained struct {
		allergen string
		at       int
	}
	// joined is two truths: both, or either.
	joined struct {
		both bool
		a, b truth
	}
	// denial is the contrary of a truth.
	denial struct{ a truth }
)

func (l literal) of() dimension    { return l.is }
func (f figure) of() dimension     { return f.function.dimension(f.tags) }
func (a arithmetic) of() dimension { return a.is }

func (l literal) where() int    { return l.at }
func (f figure) where() int     { return f.at }
func (a arithmetic) where() int { return a.a.where() }
func (c comparison) where() int { return c.terms[0].where() }
func (c contained) where() int  { return c.at }
func (j joined) where() int     { return j.a.where() }
func (d denial) where() int     { return d.a.where() }

// Constituents lists what a claim asks of, each once, in the order of the expression.
func (c *Claim) Constituents() []constituent.ID {
	var ids []constituent.ID
	seen := map[constituent.ID]bool{}
	for _, f := range figures(c.truth) {
		for _, tag := range f.tags {
			if !seen[tag.ID] {
				seen[tag.ID] = true
				ids = append(ids, tag.ID)
			}
		}
	}
	return ids
}

// Brings gives what a claim says a part of the drink brings, if it is of one such figure.
func (c *Claim) Brings() (of *constituent.Constituent, by Part, ok bool) {
	list := figures(c.truth)
	if len(list) != 1 || list[0].part.Sort == Whole {
		return nil, Part{}, false
	}
	return list[0].tags[0], list[0].part, true
}

// OfLiquid reports whether a claim asks what the drink is as a solution.
func (c *Claim) OfLiquid() bool {
	return slices.ContainsFunc(figures(c.truth), func(f figure) bool { return f.function.solution })
}

// OfTables reports whether a claim asks what no drink decides, where a food stands in its table, and
// whether it asks of nothing else.
func (c *Claim) OfTables() (some, all bool) {
	list := figures(c.truth)
	ranks := func(f figure) bool { return f.food != "" }
	some = slices.ContainsFunc(list, ranks)
	return some, some && !slices.ContainsFunc(list, func(f figure) bool { return !ranks(f) })
}

// figures lists the figures of an expression, in its order.
func figures(t truth) []figure {
	var list []figure
	var of func(q quantity)
	of = func(q quantity) {
		switch q := q.(type) {
		case figure:
			list = append(list, q)
		case arithmetic:
			of(q.a)
			of(q.b)
		}
	}
	switch t := t.(type) {
	case comparison:
		for _, q := range t.terms {
			of(q)
		}
	case joined:
		list = append(figures(t.a), figures(t.b)...)
	case denial:
		list = figures(t.a)
	}
	return list
}
