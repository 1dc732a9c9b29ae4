package batch

import (
	"context"
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/note"
	"sipsum/internal/recipe"
	"sipsum/internal/unit"
)

// Bench is what a batch is worked out with.
type Bench struct {
	Recipe   *recipe.Recipe
	Central  *assay.Plan // at central values alone
	Hands    *assay.Plan // in whose draws only what a hand measures varies (amount.Stream)
	Declared claims.Declared
	Allowed  map[string]float64 // days in which a component is used up by a code, the day it is made counted
	Yields   []assay.Yield      // of the drink with its readings; nil: it has none
}

// Ask is how much is wanted: so many serves, or a mass of the finished drink. One of them is set.
type Ask struct {
	Serves int
	Grams  float64
	Pot    float64 // g: of a recipe that makes more than twice this, as much is made as is needed, or this; 0: never less than a recipe
	Day    string  // of the service, as 2027-03-31; "": nobody says
}

// Batch is a drink made many times, worked back through what every step keeps.
type Batch struct {
	Asked   Ask
	Serves  float64 // that are wanted; of a mass perhaps a part of one
	Rounds  float64 // how often the build is made as the file writes it
	Whole   bool    // the build is charged in a bottle: Rounds are whole
	Grams   float64 // of a serve as it is finished, without its garnish
	Pots    []Pot   // in the order of making
	Build   []Pour
	Finish  []Move
	Garnish []Pour
	Bottles []Charge

	Purchases []Purchase
	Unmade    []string // components of which only a garnish that stays behind takes some: nothing is worked out of them
	Costs     []Cost   // one for each currency; none: nothing of it has a price
	Rounding  Rounding
	Precision Precision
}

// Pour is a line of the build or of the garnish: of one serve, of a bottle where it is charged in one,
// and of all.
type Pour struct {
	Weighed
	All Weighed
}

// maker works a batch out.
type maker struct {
	Bench
	ask    Ask
	walked []assay.Yield // the drink as it is written and read, at central values
	yields map[string]assay.Yield
	poured map[string]float64 // grams by path, as the file writes them
	times  map[string]float64 // how often each recipe is made; "" is the drink
	spare  map[string]float64 // grams of each component that rounding would leave it short of
	out    *Batch
}

// Make works a batch out, and how finely it has to be weighed. Errors are *fail.Error.
func Make(ctx context.Context, b Bench, ask Ask) (*Batch, error) {
	m, err := work(ctx, b, ask)
	if err != nil {
		return nil, err
	}
	if err := m.enough(ctx); err != nil {
		return nil, err
	}
	s := newBands(b)
	if err := m.steps(ctx, s); err != nil {
		return nil, err
	}
	if err := m.settle(ctx); err != nil {
		return nil, err
	}
	if err := m.inside(ctx, s); err != nil {
		return nil, err
	}
	return m.out, nil
}

// unsettled is a batch of which nobody asks how finely it is weighed.
func unsettled(ctx context.Context, b Bench, ask Ask) (*Batch, error) {
	m, err := work(ctx, b, ask)
	if err != nil {
		return nil, err
	}
	return m.out, nil
}

// work works out what a batch takes.
func work(ctx context.Context, b Bench, ask Ask) (settler, error) {
	if err := ask.check(); err != nil {
		return settler{}, err
	}
	exact, err := b.Central.Run(ctx, nil, assay.Want{Chemistry: true, Volumes: true})
	if err != nil {
		return settler{}, err
	}
	m := &maker{Bench: b, ask: ask, walked: b.read(exact.Yields), yields: map[string]assay.Yield{}, poured: map[string]float64{},
		times: map[string]float64{}, spare: map[string]float64{}}
	for _, y := range m.walked {
		m.yields[y.Component] = y
		for _, p := range y.Poured {
			m.poured[p.Path] += p.Grams
		}
	}
	if m.out = m.worked(); m.out.Serves < limits().least && ask.Grams > 0 {
		return settler{}, fail.New(fail.Wrong, "nobody makes "+unit.Number(ask.Grams)+" g of a drink of which a serve weighs "+note.Number(m.out.Grams)+" g",
			"ask for a serve or more: --serves 1")
	}
	return settler{m, exact}, nil
}

// read gives the yields of a drink with those pots as heavy as they were read. A reading of anything
// else leaves a pot what it is brought to.
func (b Bench) read(yields []assay.Yield) []assay.Yield {
	yields = slices.Clone(yields)
	for i := range yields {
		c, made := b.Recipe.Drink.Component(yields[i].Component)
		if !made || !slices.ContainsFunc(append(slices.Clone(c.Steps), c.Measured), massRead) {
			continue
		}
		for _, y := range b.Yields {
			if y.Component == c.Name {
				yields[i].Out = y.Out
			}
		}
	}
	return yields
}

// massRead reports whether a step reads a mass.
func massRead(step drink.Step) bool {
	m, ok := step.(*drink.Measured)
	return ok && m != nil && m.Mass != nil
}

// worked works the batch back from the serves, every pot with what is spare of it.
func (m *maker) worked() *Batch {
	m.out = &Batch{Asked: m.ask}
	m.rounds()
	for _, y := range slices.Backward(m.walked) { // outer ones before those that they hold
		if y.Component != "" {
			m.component(y)
		}
	}
	m.days()
	m.build()
	return m.out
}

func (a Ask) check() error {
	least, most := limits().least, limits().most
	switch {
	case a.Grams == 0 && (float64(a.Serves) < least || float64(a.Serves) > most):
		return fail.New(fail.Wrong, "nobody makes "+unit.Number(float64(a.Serves))+" serves", "ask for "+unit.Number(least)+" to "+unit.Number(most)+": --serves 24")
	case a.Serves == 0 && !(a.Grams > 0 && a.Grams <= limits().mass):
		return fail.New(fail.Wrong, "nobody makes "+unit.Number(a.Grams)+" g of a drink", "ask for up to "+unit.Number(limits().mass/unit.Kilo)+" kg: --mass 2kg")
	}
	return nil
}

// rounds tells how often the drink is made.
func (m *maker) rounds() {
	d, b := m.Recipe.Drink, m.out
	b.Grams = m.yields[""].Out / float64(d.Serves)
	b.Serves = float64(m.ask.Serves)
	if m.ask.Grams > 0 {
		b.Serves = m.ask.Grams / b.Grams
	}
	b.Rounds = b.Serves / float64(d.Serves)
	if b.Bottles = charges("", d.Finish, float64(d.Serves)); len(b.Bottles) > 0 {
		b.Whole = true
		b.Rounds = wholly(b.Rounds)
	}
	for i := range b.Bottles {
		b.Bottles[i].Count = b.Rounds
	}
	m.times[""] = b.Rounds
}

// wholly rounds up, but for the dust of a division.
func wholly(x float64) float64 { return math.Ceil(x - unit.Closeness*math.Max(1, x)) }

// build gives what goes into one glass and into all of them.
func (m *maker) build() {
	d, b := m.Recipe.Drink, m.out
	pours := func(lines []drink.Line) []Pour {
		var list []Pour
		for _, line := range lines {
			list = append(list, Pour{m.weighed(line, m.servedBy(), b.Rounds/m.servedBy()), m.weighed(line, b.Rounds, 1)})
		}
		return list
	}
	b.Build, b.Garnish = pours(d.Build), pours(d.Garnish)
	for i := range b.Garnish {
		b.Garnish[i].Top, b.Garnish[i].All.Top = true, true
	}
	for _, g := range b.Garnish {
		if _, made := m.yields[g.Name]; g.House && !made {
			b.Unmade = append(b.Unmade, g.Name)
		}
	}
	for _, step := range d.Finish {
		b.Finish = append(b.Finish, m.move(step, m.servedBy(), b.Rounds/m.servedBy()))
	}
}

// servedBy is by what an amount of the finish is multiplied: it is of one serve, but of a bottle.
func (m *maker) servedBy() float64 {
	if m.out.Whole {
		return 1
	}
	return 1 / float64(m.Recipe.Drink.Serves)
}
