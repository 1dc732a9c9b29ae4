package drink

import (
	"slices"
	"strings"
)

// checkWhole checks what no single line can tell: names that must exist, plain
// use of components, circles among components, and how large it is written out.
func (r *reader) checkWhole(d *Drink) {
	clean := r.faults.Len() == 0
	r.checkCompare(d)
	r.checkComponentLines(d)
	r.breakCircles(d)
	r.checkSize(d)
	if clean {
		r.checkVary(d)
		r.checkCompared(d)
	}
}

func (r *reader) checkCompare(d *Drink) {
	if _, ok := d.Component(d.CompareWith); ok || d.CompareWith == "" || r.torn {
		return
	}
	names := make([]string, len(d.Components))
	for i, c := range d.Components {
		names[i] = c.Name
	}
	do := "name a component of this drink"
	if guess := near(d.CompareWith, names); guess != "" {
		do = "did you mean \"" + guess + "\"?"
	}
	r.faults.Add(r.compareAt, do, "compare-with names no component: %s", quoted(d.CompareWith))
	d.CompareWith = ""
}

// checkCompared reports a component to compare with that nobody drinks: nothing says
// how much of it stands against a serving.
func (r *reader) checkCompared(d *Drink) {
	drunk := map[string]bool{}
	var visit func(lines []Line)
	visit = func(lines []Line) {
		for _, l := range lines {
			c, ok := d.Component(l.Food)
			if !ok || !l.Eaten || drunk[c.Name] {
				continue
			}
			drunk[c.Name] = true
			for _, inner := range c.lists() {
				visit(*inner)
			}
		}
	}
	for lines := range d.outerLists() {
		visit(*lines)
	}
	if d.CompareWith != "" && !drunk[d.CompareWith] {
		r.faults.Add(r.compareAt, "pour it, name a component that the drink uses, or take compare-with out", "compare-with names %s, and no line of the drink uses it", quoted(d.CompareWith))
	}
}

// checkVary reports an entry of vary that no line can follow.
func (r *reader) checkVary(d *Drink) {
	var foods []string
	for lines := range d.lists() {
		for _, l := range *lines {
			foods = append(foods, l.Food)
		}
	}
	for _, v := range d.Vary {
		if slices.Contains(foods, v.Of) {
			continue
		}
		do := "write the food as its line has it"
		if guess := near(v.Of, foods); guess != "" {
			do = "did you mean \"" + guess + "\"?"
		}
		r.faults.Add(v.Place, do, "vary names %s, which is in no line", quoted(v.Of))
	}
}

// checkComponentLines reports keys of a line that mean nothing for a component,
// and garnish keys elsewhere.
func (r *reader) checkComponentLines(d *Drink) {
	for lines := range d.lists() {
		for _, l := range *lines {
			if !l.Eaten && lines != &d.Garnish {
				r.faults.Add(l.Place, "take eaten out", "only a garnish can be left uneaten")
			}
			if _, ok := d.Component(l.Food); ok && l.Portion+l.As+l.Fill != "" {
				r.faults.Add(l.Place, "take portion, as and fill out and give an amount", "%s is a component, not a food of a table", quoted(l.Food))
			}
		}
	}
}

// breakCircles reports components that are made of themselves and takes the line
// that closes the circle out of the drink, so that whoever walks it comes to an
// end.
func (r *reader) breakCircles(d *Drink) {
	const walking, done = 1, 2
	state := map[string]int{}
	var trail []string
	var visit func(c *Component)
	visit = func(c *Component) {
		state[c.Name] = walking
		trail = append(trail, c.Name)
		for _, lines := range c.lists() {
			*lines = slices.DeleteFunc(*lines, func(l Line) bool {
				next, ok := d.Component(l.Food)
				if !ok || state[next.Name] == done {
					return false
				}
				if state[next.Name] == walking {
					circle := append(slices.Clone(trail[slices.Index(trail, next.Name):]), next.Name)
					r.faults.Add(l.FoodAt, "take one of these lines out", "components go round in a circle: %s", clipTrail(circle))
					return true
				}
				visit(next)
				return false
			})
		}
		trail = trail[:len(trail)-1]
		state[c.Name] = done
	}
	for i := range d.Components {
		if state[d.Components[i].Name] == 0 {
			visit(&d.Components[i])
		}
	}
}

// clipTrail writes a circle of names, its middle left out if it is long.
func clipTrail(names []string) string {
	const most = 8
	if len(names) > most {
		names = append(append(slices.Clone(names[:most/2]), "…"), names[len(names)-most/2:]...)
	}
	shown := make([]string, len(names))
	for i, n := range names {
		shown[i] = clip(n)
	}
	return strings.Join(shown, " → ")
}
