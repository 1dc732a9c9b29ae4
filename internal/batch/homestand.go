package batch

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"strconv"
	"strings"

	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// The group and the names of foods that a stand-in is about.
const (
	waters      = "water"
	sugarGroup  = "sugar"
	tapWater    = "core:water-tap"
	ofAcidity   = "ta()"
	ofSugars    = "serving(SUGAR)"
	ofVolume    = "volume()"
	noWaterHere = "no water is poured that could be bought sparkling: it comes without gas"
)

// sparkle buys sparkling water in the place of the water that a siphon would charge: that of its pot,
// else that of the build.
func (c *cook) sparkle(pot, path string) error {
	d, stood := c.now.Recipe.Drink, Stood{Path: path, From: "carbonate", To: atHome().sparkles, Source: "common practice, no source"}
	for _, of := range []string{pot, ""} {
		for _, p := range c.lines(d) {
			in := c.now.Recipe.Lines[p.line.Path]
			if p.pot != of || in.Component != nil || in.Profile.Food.Group != waters {
				continue
			}
			c.Stands = append(c.Stands, stood)
			return c.text.Swap(d, p.line, atHome().sparkles)
		}
	}
	stood.To, stood.Why = "", noWaterHere
	c.Stands = append(c.Stands, stood)
	return nil
}

// standing is a line of a stand-in.
type standing struct {
	placed
	from   string // the food in whose place it is
	to     standIn
	amount unit.Amount
}

// stand puts what a kitchen has in the place of what it has not, and fits its amount, and that of
// the sugar and water in the same pot, to the acidity and the sugars of a serving.
func (c *cook) stand(ctx context.Context) error {
	found, err := c.swapped(ctx)
	if err != nil || len(found) == 0 {
		return err
	}
	amounts, pots := amount.Amounts{}, map[string]bool{}
	var vary []drink.Vary
	first := len(c.Stands)
	for _, s := range found {
		path := s.line.Path
		if a, ok := amounts[path]; ok { // two acids, one juice
			s.amount.Number += a.Number
		}
		amounts[path], pots[s.pot] = s.amount, true
		c.Stands = append(c.Stands, Stood{Path: path, From: s.from, To: s.to.food, Source: s.to.source})
	}
	water := false
	for _, p := range c.lines(c.now.Recipe.Drink) {
		in := c.now.Recipe.Lines[p.line.Path]
		if a, ok := amounts[p.line.Path]; ok {
			vary = append(vary, between(p.line.Path, a, atHome().least, atHome().most))
			continue
		}
		if !pots[p.pot] || in.Component != nil || p.line.Amount.Measure.Kind != unit.Mass {
			continue
		}
		if g := in.Profile.Food.Group; g == sugarGroup || g == waters { // a juice brings some of both
			vary = append(vary, between(p.line.Path, p.line.Amount, atHome().stays["least"], atHome().stays["most"]))
			water = water || g == waters
		}
	}
	if err := c.rewrite(ctx, amounts); err != nil {
		return err
	}
	fitted, why := c.fitted(ctx, vary, water)
	for i := first; i < len(c.Stands); i++ {
		c.Stands[i].Fitted, c.Stands[i].Why = why == "", why
	}
	if len(fitted) == 0 {
		return nil
	}
	return c.rewrite(ctx, fitted)
}

// swapped swaps foods that no kitchen has, and gives the lines as they are now, with the amounts at which
// the search begins. Of two that become the same food in one list the second line goes.
func (c *cook) swapped(ctx context.Context) ([]standing, error) {
	d := c.now.Recipe.Drink
	list := c.lines(d)
	at := map[int]standing{}
	for i, p := range list {
		in := c.now.Recipe.Lines[p.line.Path]
		if in.Component != nil || p.line.Amount.Measure.Kind != unit.Mass {
			continue
		}
		id := in.Profile.Food.ID.String()
		to, ok := atHome().standIns[id]
		if !ok {
			continue
		}
		if err := c.text.Swap(d, p.line, to.food); err != nil {
			return nil, err
		}
		a := times(p.line.Amount, to.begins)
		a.Half = 0
		at[i] = standing{from: id, to: to, amount: a}
	}
	if len(at) == 0 {
		return nil, nil
	}
	if err := c.again(ctx); err != nil {
		return nil, err
	}
	list = c.lines(c.now.Recipe.Drink)
	kept := map[int]int{}                 // the line into which another went
	for i := len(list) - 1; i >= 0; i-- { // the last first: those before it keep their places
		s, stood := at[i]
		if j := c.same(list[:i], at, i); stood && j >= 0 && c.text.drop(c.now.Recipe.Drink, list[i].line) {
			kept[i] = j
		} else if stood {
			s.placed = list[i]
			at[i] = s
		}
	}
	if len(kept) > 0 {
		if err := c.again(ctx); err != nil {
			return nil, err
		}
	}
	now, n := c.lines(c.now.Recipe.Drink), 0
	var found []standing
	for i := range list {
		s, stood := at[i]
		j, went := kept[i]
		switch {
		case went:
			s.placed = at[j].placed
		case stood:
			s.placed = now[n]
			at[i] = s
		}
		if !went {
			n++
		}
		if stood {
			found = append(found, s)
		}
	}
	return found, nil
}

// same finds, among lines before one, the first that holds the same stand-in in the same list; -1: none.
func (c *cook) same(before []placed, at map[int]standing, i int) int {
	list := c.lines(c.now.Recipe.Drink)
	for j := range before {
		a, stood := at[j]
		if stood && before[j].pot == list[i].pot && a.to.food == at[i].to.food && drink.Owner(before[j].line.Path) == drink.Owner(list[i].line.Path) && before[j].step == list[i].step {
			return j
		}
	}
	return -1
}

func between(path string, a unit.Amount, least, most float64) drink.Vary {
	a.Decimals = max(a.Decimals, 1)
	return drink.Vary{Of: path, From: times(a, least), To: times(a, most)}
}

// fitted finds the amounts at which a serving is as sour and as sweet as the recipe makes it without its
// readings; why not, in words.
func (c *cook) fitted(ctx context.Context, vary []drink.Vary, water bool) (amount.Amounts, string) {
	g, err := glass(ctx, c.bare)
	if err != nil {
		return nil, err.Error()
	}
	var targets []drink.Target
	hold := func(expression, name string) string {
		low, high, in, err := ends(expression, g)
		if err != nil || math.IsNaN(low) || math.IsInf(high, 0) || math.IsNaN(high) || high <= 0 {
			return name + " of the drink is not known"
		}
		share := atHome().held[name]
		targets = append(targets, drink.Target{Check: fmt.Sprintf("%s between %s %s and %s %s",
			expression, figure(low*(1-share)), in, figure(high*(1+share)), in)})
		return ""
	}
	if why := hold(ofAcidity, acidityHeld); why != "" {
		return nil, why
	}
	why := hold(ofSugars, sugarsHeld)
	if water {
		why = cmp.Or(why, hold(ofVolume, Volume))
	}
	b := c.now
	d := *b.Recipe.Drink
	d.Targets, d.Vary, d.Glass = targets, vary, nil
	r := *b.Recipe
	r.Drink = &d
	b.Recipe = &r
	amounts, met, err := c.Fit(ctx, b)
	switch {
	case err != nil:
		return nil, plainly(err)
	case !met:
		return amounts, "not both can be held: the nearest was taken"
	}
	return amounts, why
}

func plainly(err error) string {
	if e, ok := err.(*fail.Error); ok {
		return e.Error()
	}
	return err.Error()
}

// figure writes a figure as an expression has it.
func figure(x float64) string {
	const most = 5
	y, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', most, 64), 64)
	return strconv.FormatFloat(y, 'f', -1, 64)
}

// dissolve makes a solution of a powder of which the least that a spoon measures is too much.
func (c *cook) dissolve(ctx context.Context) error {
	d, written := c.now.Recipe.Drink, c.now.Central.Written()
	spoons := atHome().spoons
	least := spoons[len(spoons)-1]
	for _, p := range c.lines(d) {
		in := c.now.Recipe.Lines[p.line.Path]
		a, ok := written[p.line.Path]
		if !ok || in.Component != nil || a.Measure.Kind != unit.Mass {
			continue
		}
		f := in.Profile.Food
		per, _ := perMillilitre(f)
		if !atHome().dissolves[f.Group] || per == 0 || a.Base() >= per*least.Factor*least.part*(1-limits().share) {
			continue
		}
		name := strings.ReplaceAll(f.ID.Code, "-", " ") + " solution"
		spoonful, water := "1 "+least.Name, unit.Number(atHome().water)+" ml"
		if err := c.text.Swap(d, p.line, name); err != nil {
			return err
		}
		c.text = rowsOf(withPot(c.text.Text(), name, []string{spoonful + " " + f.ID.String(), water + " " + tapWater}))
		if err := c.again(ctx); err != nil {
			return err
		}
		path := ""
		for _, q := range c.lines(c.now.Recipe.Drink) {
			if q.line.Food == name && q.pot == p.pot {
				path = q.line.Path
			}
		}
		grams := per * least.Factor
		of := multiplied(times(a, (grams+atHome().water)/grams), 1)
		of.Half = 0
		c.Stands = append(c.Stands, Stood{Path: path, From: f.ID.String(), To: name, Source: "our own bound: the least that a spoon measures is too much of it", Fitted: true, Spoon: spoonful, Water: water})
		if err := c.rewrite(ctx, amount.Amounts{path: of}); err != nil {
			return err
		}
		return c.dissolve(ctx) // lines have moved
	}
	return nil
}
