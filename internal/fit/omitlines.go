package fit

import (
	"slices"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/note"
	"sipsum/internal/recipe"
)

// Place is where a line of a pot stood that is left out, and what is poured there instead.
type Place struct {
	Pot  string
	Line drink.Line
	By   []drink.Line // as reckoned; how they are fitted says Amounts

	step string // the path of the step that adds it; empty: it is an ingredient
}

// cutter takes lines out of a drink.
type cutter struct {
	*Omission
	recipe  *recipe.Recipe
	next    *drink.Drink
	gone    map[string]bool // components
	touched map[string]bool // components that are not what they were
}

// without gives the drink without what is left out.
func (o *Omission) without(d *drink.Drink, r *recipe.Recipe) (*drink.Drink, error) {
	next := *d
	next.Targets, next.Vary, next.Claims, next.Categories, next.CompareWith, next.CompareAlso, next.Glass = nil, nil, nil, nil, "", nil, nil
	next.Mentions = nil
	next.Components = slices.Clone(d.Components)
	c := cutter{o, r, &next, map[string]bool{o.whole: true}, map[string]bool{}}
	for again := true; again; { // a component of which nothing is left goes too, and what it was in is read no more
		again = false
		for i := range next.Components {
			if !c.gone[next.Components[i].Name] {
				again = c.thin(i) || again
			}
		}
	}
	c.forget()
	next.Build, next.Garnish = c.drop(d.Build, nil), c.drop(d.Garnish, nil)
	next.Finish = c.steps(d.Finish, "")
	next.Components = slices.DeleteFunc(next.Components, func(p drink.Component) bool { return c.gone[p.Name] })
	switch {
	case len(next.Build) == 0:
		return nil, fail.New(fail.Wrong, "without "+note.Quote(o.What)+" nothing is left of the drink", "omit a part of it")
	case len(o.Lines) == 0:
		return nil, fail.New(fail.Wrong, note.Quote(o.What)+" is in no line that is poured", "name what the build pours, or an ingredient of it")
	}
	return &next, nil
}

// goes reports whether a line pours what is left out.
func (c *cutter) goes(l drink.Line) bool {
	in := c.recipe.Lines[l.Path]
	if in.Component != nil {
		return c.gone[in.Component.Name]
	}
	return c.whole == "" && in.Profile != nil && in.Profile.Food.ID == c.food
}

// thin leaves lines of a component out; it tells whether more may follow from that.
func (c *cutter) thin(i int) (more bool) {
	p, lines := &c.next.Components[i], len(c.Lines)
	p.Ingredients = c.drop(p.Ingredients, &Place{Pot: p.Name})
	p.Steps = c.steps(p.Steps, p.Name)
	rest := p.Lines()
	changed := func(l drink.Line) bool {
		in := c.recipe.Lines[l.Path]
		return in.Component != nil && c.touched[in.Component.Name]
	}
	if (len(c.Lines) > lines || slices.ContainsFunc(rest, changed)) && !c.touched[p.Name] {
		c.touched[p.Name], more = true, true
		c.unread(p)
	}
	if len(rest) == 0 {
		c.gone[p.Name], more = true, true
	}
	return more
}

// forget forgets what stood in components that go as a whole.
func (c *cutter) forget() {
	c.Places = slices.DeleteFunc(c.Places, func(p *Place) bool { return c.gone[p.Pot] })
	c.Undone = slices.DeleteFunc(c.Undone, func(u Undone) bool { return u.Pot != "" && c.gone[u.Pot] })
	c.Unread = slices.DeleteFunc(c.Unread, func(pot string) bool { return c.gone[pot] })
	c.Lines = slices.DeleteFunc(c.Lines, func(l drink.Line) bool { return c.gone[drink.Owner(l.Path)] })
}

// drop leaves out the lines that pour what is gone. Where they stood is kept, if it is wanted.
func (c *cutter) drop(lines []drink.Line, at *Place) []drink.Line {
	var kept []drink.Line
	for _, l := range lines {
		if !c.goes(l) {
			kept = append(kept, l)
			continue
		}
		c.Lines = append(c.Lines, l)
		if at != nil {
			next := *at
			next.Line = l
			c.Places = append(c.Places, &next)
		}
	}
	return kept
}

// steps leaves lines of steps out, and steps whose last line goes. What is added stays in the pot, so
// that something takes its place; what is taken out again (steeped, washed with, clarified by), and a
// dose, leaves none.
func (c *cutter) steps(list []drink.Step, pot string) []drink.Step {
	var kept []drink.Step
	for _, s := range list {
		lines := s.Lines()
		if !slices.ContainsFunc(lines, c.goes) {
			kept = append(kept, s)
			continue
		}
		var at *Place
		if _, adds := s.(*drink.Add); adds && pot != "" {
			at = &Place{Pot: pot, step: s.StepPath()}
		}
		rest := c.drop(lines, at)
		if len(rest) == 0 && at == nil {
			c.Undone = append(c.Undone, Undone{pot, s.Kind()})
			continue
		}
		kept = append(kept, drink.WithLines(s, rest))
	}
	return kept
}

// unread forgets the readings of a component, which were of it as it was.
func (c *cutter) unread(p *drink.Component) {
	if forgotten(p) {
		c.Unread = append(c.Unread, p.Name)
	}
}

// forgotten takes what was read of a component out; false where nothing was.
func forgotten(c *drink.Component) bool {
	was := c.Measured != nil || slices.ContainsFunc(c.Steps, isReading)
	c.Measured, c.Steps = nil, withoutReadings(c.Steps)
	return was
}

func withoutReadings(steps []drink.Step) []drink.Step {
	return slices.DeleteFunc(slices.Clone(steps), isReading)
}

func isReading(s drink.Step) bool {
	_, is := s.(*drink.Measured)
	return is
}

// listed gives the path of a line that stands in the list of another.
func listed(path, food string) string { return path[:strings.LastIndexByte(path, '/')+1] + food }
