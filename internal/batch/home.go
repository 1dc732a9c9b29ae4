package batch

import (
	"context"
	"math"
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// Kitchen is with what the home version of a drink is worked out.
type Kitchen struct {
	Bench
	Text []byte                                                           // of the drink's file
	Read func(ctx context.Context, text []byte) (Bench, error)            // a text in its place, as a drink
	Fit  func(ctx context.Context, b Bench) (amount.Amounts, bool, error) // to the targets of its drink; false: one is missed
}

// Home is a drink for somebody without a scale, as a file of its own.
type Home struct {
	Serves int
	Text   []byte
	Bench  // of the text
	Lines  []Spooned
	Stands []Stood
	Unread []string           // pots whose readings are left out: nobody reads a pot at home
	Pots   map[string]Pot     // of the batch that it is, for how long each keeps
	Times  map[string]float64 // how often a brew is made; a pot that is made once is not in it
	Less   []string           // pots of which less is made than their recipe makes
	Makes  map[string]float64 // ml that a pot makes; what has no volume is not in it
	Bands  []Band
	Left   []string // bands that the home version leaves, made as written; none: it is the same drink within them
	Untold []string // what of it nobody can say whether it stays, as bought gas
	Inside float64  // the share of servings that stay within every band, spoons filled as hands do; NaN: there is no band
	First  string   // the band that is left most often
}

// Spooned is a line, or an amount of a step, as somebody measures it at home.
type Spooned struct {
	Path    string
	Pot     string // "": the drink
	Name    string // of an amount of a step its parameter
	Step    bool   // it is an amount of a step
	Garnish bool
	Later   bool        // a step brings it
	Times   float64     // how often it is measured: in each brew; all that follows is of one
	Exact   float64     // g, before it was rounded
	Grams   float64     // as it is written now, at central values
	To      unit.Amount // spoons or cups; of no measure: none holds it
	Count   float64     // of portions, where it is counted
	Of      string      // the portion; of a spoon how it is filled: "ground"
	Scale   unit.Amount // what a scale shows, where one is needed
	Weigh   string      // why this is weighed; "": no scale is needed
	Off     float64     // of a taste: how far a spoon may move it, of itself
	Buy     string      // a word on where it comes from
}

// Stood is a food in whose place another stands.
type Stood struct {
	Path     string
	From, To string // foods
	Source   string
	Fitted   bool
	Why      string // it could not be fitted
	Spoon    string // it is a solution of so much: "1 tsp"
	Water    string // in so much water
}

// homeHead tells whoever opens the file what it is; the remarks below are those of the first.
const homeHead = "# The home version: spoons, cups and stand-ins. Remarks below are of the drink that it was made from.\n"

// cook works a home version out.
type cook struct {
	Kitchen
	*Home
	text  rows
	now   Bench
	bare  Bench              // the recipe without its readings, to which the home version is held
	fills map[string]measure // by path, what was found to measure it
}

// MakeHome works the home version of a drink out for so many serves: readings and gas are left out,
// what no kitchen has gives way to what it has and is fitted again, and what a spoon measures well
// enough is measured with one. Errors are *fail.Error.
func MakeHome(ctx context.Context, k Kitchen, serves int) (*Home, error) {
	if err := (Ask{Serves: serves}).check(); err != nil {
		return nil, err
	}
	c := &cook{Kitchen: k, Home: &Home{Serves: serves, Inside: math.NaN(), Makes: map[string]float64{}, Times: map[string]float64{}, Pots: map[string]Pot{}}, now: k.Bench, text: rowsOf(k.Text), fills: map[string]measure{}}
	for _, do := range []func(context.Context) error{c.unread, c.bared, c.scale, c.stand, c.dissolve, c.spoon, c.close} {
		if err := do(ctx); err != nil {
			return nil, err
		}
	}
	c.Home.Text, c.Home.Bench = append([]byte(homeHead), c.text.Text()...), c.now
	return c.Home, c.held(ctx)
}

// again reads the text as it has become; rows that were cut out are none from here on.
func (c *cook) again(ctx context.Context) error {
	c.text = rowsOf(c.text.Text())
	b, err := c.Read(ctx, c.text.Text())
	if err != nil {
		return err
	}
	c.now = b
	_, err = b.Central.Run(ctx, nil, assay.Want{}) // a plan knows what is written when it has run
	return err
}

// rewrite puts other amounts into the text.
func (c *cook) rewrite(ctx context.Context, other amount.Amounts) error {
	text, err := amount.Rewrite(c.now.Recipe.Drink, c.text.Text(), c.now.Central.Written(), other)
	if err != nil {
		return err
	}
	c.text = rowsOf(text)
	return c.again(ctx)
}

// stepsOf gives the steps of a component, with what was read of it after the last.
func stepsOf(c *drink.Component) []drink.Step {
	if c.Measured == nil {
		return c.Steps
	}
	return append(slices.Clone(c.Steps), c.Measured)
}

// unread takes the readings out: they are of the bar's pot. It takes what a siphon does out too.
func (c *cook) unread(ctx context.Context) error {
	d := c.now.Recipe.Drink
	steps := func(of string, list []drink.Step) error {
		read := false
		for _, s := range list {
			switch s.Kind() {
			case "measured":
				read = true
			case "carbonate":
			default:
				continue
			}
			if err := c.text.Cut(d, s.At(), s.Kind()); err != nil {
				return err
			}
			if s.Kind() == "carbonate" {
				if err := c.sparkle(of, s.StepPath()); err != nil {
					return err
				}
			}
		}
		if read {
			c.Unread = append(c.Unread, of)
		}
		return nil
	}
	for i := range d.Components {
		p := &d.Components[i]
		if err := steps(p.Name, stepsOf(p)); err != nil {
			return err
		}
	}
	if err := steps("", d.Finish); err != nil {
		return err
	}
	return c.again(ctx)
}

// scale writes the amounts of so many serves: of the build all at once, of a pot as a batch makes it.
func (c *cook) scale(ctx context.Context) error {
	d := c.now.Recipe.Drink
	b, err := unsettled(ctx, c.now, Ask{Serves: c.Serves, Pot: atHome().pot})
	if err != nil {
		return err
	}
	times, other, written := map[string]float64{}, amount.Amounts{}, c.now.Central.Written()
	for _, line := range d.Garnish { // of what stays behind no run asks
		if line.Amount.Measure.Kind != "" {
			written[line.Path] = line.Amount
		}
	}
	for _, p := range b.Pots {
		c.Pots[p.Name] = p
		if p.Times < 1 {
			c.Less = append(c.Less, p.Name)
		}
		brews := 1.0
		if p.Whole != nil && p.Times > 1 { // the file makes them all, so that what is made is what is taken
			brews = p.Times
			c.Home.Times[p.Name] = brews
		}
		for _, w := range p.Lines {
			times[w.Path] = brews / w.file
		}
		for _, m := range p.Moves {
			for _, w := range append(m.Lines[:len(m.Lines):len(m.Lines)], m.Amounts...) {
				times[w.Path] = brews / w.file
			}
		}
	}
	for _, p := range append(b.Build[:len(b.Build):len(b.Build)], b.Garnish...) {
		times[p.Path] = b.Rounds
	}
	for _, m := range b.Finish {
		for _, w := range append(m.Lines[:len(m.Lines):len(m.Lines)], m.Amounts...) {
			times[w.Path] = b.Rounds
		}
	}
	for path, k := range times {
		a, ok := written[path]
		if !ok || k == 1 || a.Measure.Kind == unit.Share {
			continue
		}
		a = multiplied(a, k)
		other[path] = a
	}
	for _, of := range c.lines(d) {
		if of.line.Portion == "" || times[of.line.Path] == 1 || times[of.line.Path] == 0 {
			continue
		}
		if err := c.text.count(d, of.line, of.line.Count*times[of.line.Path]); err != nil {
			return err
		}
	}
	text, err := amount.Rewrite(d, c.text.Text(), written, other)
	if err != nil {
		return err
	}
	c.text = rowsOf(serve(text, c.Serves))
	return c.again(ctx)
}

// multiplied multiplies an amount and keeps a hundredth of what was written last.
func multiplied(a unit.Amount, k float64) unit.Amount {
	const finer = 2
	a = times(a, k)
	a.Decimals += finer
	digits := math.Pow10(a.Decimals)
	a.Number, a.Half = math.Round(a.Number*digits)/digits, math.Round(a.Half*digits)/digits
	return a
}

// placed is a line with where it is poured.
type placed struct {
	pot  string
	step string // the step that brings it; "": none does
	line drink.Line
}

// lines lists what is poured, in the order of making.
func (c *cook) lines(d *drink.Drink) []placed {
	var list []placed
	add := func(pot, step string, lines []drink.Line) {
		for _, l := range lines {
			list = append(list, placed{pot, step, l})
		}
	}
	steps := func(pot string, of []drink.Step) {
		for _, s := range of {
			add(pot, s.StepPath(), s.Lines())
		}
	}
	for i := range d.Components {
		add(d.Components[i].Name, "", d.Components[i].Ingredients)
		steps(d.Components[i].Name, d.Components[i].Steps)
	}
	add("", "", d.Build)
	steps("", d.Finish)
	return list
}

// held judges whether the home version is the same drink: against the recipe without its readings,
// within the bands of a batch.
func (c *cook) held(ctx context.Context) error {
	s := newBands(c.bare)
	a, err := c.bare.Central.Run(ctx, nil, s.want)
	if err != nil {
		return err
	}
	was := s.holdHome(a)
	of := newBands(c.now)
	of.list = slices.Clone(s.list)
	home, err := c.now.Central.Run(ctx, nil, of.want)
	if err != nil {
		return err
	}
	read := of.readHome(home)
	c.Home.Untold = s.untold(read)
	if c.Home.Bands = s.list; len(s.list) == 0 {
		return nil
	}
	of.list = s.list
	c.Home.Left = s.lefts(read, was, 0)
	drawn, err := c.now.Hands.Run(ctx, nil, of.want)
	if err != nil {
		return err
	}
	r := of.readHome(drawn)
	left, stay, n := map[string]int{}, 0, s.drawn(r)
	for d := 1; d < n; d++ {
		name, out := s.leaves(r, was, d)
		if !out {
			stay++
		} else if left[name]++; left[name] > left[c.Home.First] {
			c.Home.First = name
		}
	}
	if n > 1 {
		c.Home.Inside = float64(stay) / float64(n-1)
	}
	return nil
}

// lefts names every band that a reading leaves.
func (s *bands) lefts(r, was reading, d int) []string {
	var names []string
	for _, b := range s.list {
		one := bands{list: []Band{b}}
		if name, out := one.leaves(r, was, d); out {
			names = append(names, name)
		}
	}
	return names
}

// bared reads the recipe without its readings.
func (c *cook) bared(ctx context.Context) error {
	c.bare = c.Kitchen.Bench
	if len(c.Unread) == 0 {
		return nil
	}
	bare := &cook{Kitchen: c.Kitchen, Home: &Home{}, now: c.Kitchen.Bench, text: rowsOf(c.Kitchen.Text)}
	err := bare.readingsOut(ctx)
	c.bare = bare.now
	return err
}

// readingsOut takes readings out, and nothing else.
func (c *cook) readingsOut(ctx context.Context) error {
	d := c.now.Recipe.Drink
	cut := func(list []drink.Step) error {
		for _, s := range list {
			if s.Kind() == "measured" {
				if err := c.text.Cut(d, s.At(), s.Kind()); err != nil {
					return err
				}
			}
		}
		return nil
	}
	for i := range d.Components {
		p := &d.Components[i]
		if err := cut(stepsOf(p)); err != nil {
			return err
		}
	}
	if err := cut(d.Finish); err != nil {
		return err
	}
	return c.again(ctx)
}

// ends gives a figure of a run at central values, with what is unknown at either end, in its own unit.
func ends(expression string, g *claims.Glass) (low, high float64, in string, err error) {
	t, err := claim.ParseTarget("least "+expression, fail.Place{})
	if err != nil {
		return 0, 0, "", err
	}
	a, b, err := t.Goal.Values(g)
	if err != nil {
		return 0, 0, "", err
	}
	in, base := t.Goal.Unit()
	return a[0] / base, b[0] / base, in, nil
}

// glass is a bench's drink at central values, as claims ask of it.
func glass(ctx context.Context, b Bench) (*claims.Glass, error) {
	a, err := b.Central.Run(ctx, nil, assay.Want{Draws: true, Chemistry: true})
	if err != nil {
		return nil, err
	}
	return claims.NewGlass(a, b.Declared), nil
}
