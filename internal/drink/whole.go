package drink

import (
	"cmp"
	"slices"
	"strings"
)

// whole is a drink that has been read, and the file to whose list its faults go.
type whole struct {
	drink    *Drink
	file     *file
	compared []Word // of compare-with
}

// check finds what no single line can tell: names that must exist, plain
// use of components, circles among components, and how large it is written out.
func (w *whole) check() {
	clean := w.file.faults.Len() == 0
	w.readConstituents()
	w.checkCompare()
	w.checkComponentLines()
	w.breakCircles()
	w.checkSize()
	if clean {
		w.checkCompared()
	}
	w.checkVary()
	w.checkStands()
	w.checkMeters()
}

// checkCompare reports what compare-with names and no component is called.
func (w *whole) checkCompare() {
	if w.file.torn {
		return
	}
	names, several := each(w.drink.Components, func(c Component) string { return c.Name }), len(w.compared) > 1
	w.compared = slices.DeleteFunc(w.compared, func(named Word) bool {
		if _, ok := w.drink.Component(named.Text); ok {
			return false
		}
		do := "name a component of this drink"
		if meant := near(named.Text, names); meant != "" {
			do = "write: compare-with: " + meant
			if several {
				do = "write " + meant
			}
		}
		w.file.faults.Add(named.Place, do, "compare-with names no component: %s", quoted(named.Text))
		return true
	})
	w.drink.setCompared(w.compared)
}

// checkCompared reports a component to compare with that nobody drinks: nothing says
// how much of it stands against a serving.
func (w *whole) checkCompared() {
	drunk := map[string]bool{}
	var visit func(lines []Line)
	visit = func(lines []Line) {
		for _, l := range lines {
			c, ok := w.drink.Component(l.Food)
			if !ok || !l.Eaten || drunk[c.Name] {
				continue
			}
			drunk[c.Name] = true
			for _, inner := range c.lists() {
				visit(*inner)
			}
		}
	}
	for _, lines := range w.drink.outerLists() {
		visit(*lines)
	}
	for _, named := range w.compared {
		if !drunk[named.Text] {
			w.file.faults.Add(named.Place, "pour it, name a component that the drink uses, or take compare-with out", "compare-with names %s, and no line of the drink uses it", quoted(named.Text))
		}
	}
}

// checkVary reports an entry of vary that no line can follow.
func (w *whole) checkVary() {
	var foods []string
	for _, lines := range w.drink.lists() {
		for _, l := range *lines {
			foods = append(foods, l.Food)
		}
	}
	for _, m := range w.drink.Mentions {
		foods = append(foods, m.Food)
	}
	for _, v := range w.drink.Vary {
		if slices.Contains(foods, v.Of) || w.drink.mayName(v.Of) || w.drink.mayLead(v.Of) {
			continue
		}
		do := cmp.Or(guess(v.Of, foods, ""), "write the food as its line has it")
		w.file.faults.Add(v.Place, do, "vary names %s, which is in no line", quoted(v.Of))
	}
}

// mayLead reports whether a name may be the path of an amount: whose it is, and what follows.
func (d *Drink) mayLead(name string) bool {
	owner, _, follows := strings.Cut(name, "/")
	_, ok := d.Component(owner)
	return follows && (ok || owner == "build" || owner == "finish")
}

// checkComponentLines reports keys of a line that mean nothing for a component,
// and garnish keys elsewhere.
func (w *whole) checkComponentLines() {
	for _, lines := range w.drink.lists() {
		for _, l := range *lines {
			if !l.Eaten && lines != &w.drink.Garnish {
				w.file.faults.Add(l.Place, "take eaten out", "only a garnish can be left uneaten")
			}
			if _, ok := w.drink.Component(l.Food); ok && l.Portion+l.As+l.Fill != "" {
				w.file.faults.Add(l.Place, "take portion, as and fill out and give an amount", "%s is a component, not a food of a table", quoted(l.Food))
			}
		}
	}
}

// breakCircles reports components that are made of themselves and takes the line
// that closes the circle out of the drink, so that whoever walks it comes to an
// end.
func (w *whole) breakCircles() {
	const walking, done = 1, 2
	state := map[string]int{}
	var trail []string
	var visit func(c *Component)
	visit = func(c *Component) {
		state[c.Name] = walking
		trail = append(trail, c.Name)
		for _, lines := range c.lists() {
			*lines = slices.DeleteFunc(*lines, func(l Line) bool {
				next, ok := w.drink.Component(l.Food)
				if !ok || state[next.Name] == done {
					return false
				}
				if state[next.Name] == walking {
					circle := append(slices.Clone(trail[slices.Index(trail, next.Name):]), next.Name)
					w.file.faults.Add(l.FoodAt, "take one of these lines out", "components go round in a circle: %s", clipTrail(circle))
					return true
				}
				visit(next)
				return false
			})
		}
		trail = trail[:len(trail)-1]
		state[c.Name] = done
	}
	for i := range w.drink.Components {
		if state[w.drink.Components[i].Name] == 0 {
			visit(&w.drink.Components[i])
		}
	}
}

// clipTrail writes a circle of names, its middle left out if it is long.
func clipTrail(names []string) string {
	const most = 8
	if len(names) > most {
		names = append(append(slices.Clone(names[:most/2]), "…"), names[len(names)-most/2:]...)
	}
	return strings.Join(each(names, clip), " → ")
}

// lists gives the lists of lines of a component: its ingredients, then those of
// its steps.
func (c *Component) lists() []*[]Line {
	return append([]*[]Line{&c.Ingredients}, stepLists(c.Steps)...)
}

// Lines gives all lines of a component: its ingredients, then those of its steps.
func (c *Component) Lines() []Line { return joined(c.lists()) }

// Poured gives all lines that a drink pours: of its components, of the build, of the finish. What garnishes is not poured.
func (d *Drink) Poured() []Line {
	lists := d.lists()
	return joined(lists[:len(lists)-1]) // the last is the garnish
}

func joined(lists []*[]Line) (all []Line) {
	for _, list := range lists {
		all = append(all, *list...)
	}
	return all
}

// outerLists gives the lists of lines that stand outside components.
func (d *Drink) outerLists() []*[]Line {
	return append(append([]*[]Line{&d.Build}, stepLists(d.Finish)...), &d.Garnish)
}

// lists gives every list of lines of the drink.
func (d *Drink) lists() (all []*[]Line) {
	for i := range d.Components {
		all = append(all, d.Components[i].lists()...)
	}
	return append(all, d.outerLists()...)
}

func stepLists(steps []Step) (lists []*[]Line) {
	for _, s := range steps {
		lists = append(lists, s.list())
	}
	return lists
}
