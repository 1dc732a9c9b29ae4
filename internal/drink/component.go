package drink

import (
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

var componentKeys = grammar[Component]{"a component", []key[Component]{
	{"ingredients", "what goes into the pot", true, linesShape, func(r *reader, c *Component, n ast.Node) {
		c.Ingredients = r.lines(n, "ingredients", escape(c.Name))
	}},
	{"steps", "what is done with it, in order", false, stepsShape, func(r *reader, c *Component, n ast.Node) {
		c.Steps = r.steps(n, "steps", escape(c.Name))
	}},
	{"measured", "readings after the last step", false, measuredShape, func(r *reader, c *Component, n ast.Node) {
		head := Head{Word: "measured", Place: r.nodeAt(n), Path: escape(c.Name) + "/end/measured"}
		if m, ok := readMeasured(r, head, n); ok {
			c.Measured = m
		}
	}},
	into("keeps", "how long and how cold it is kept: 5 days at 4 °C", false, textShape(mostName),
		(*reader).keeps, func(c *Component) **Keeps { return &c.Keeps }),
	vesselKey("it is made or kept in", func(c *Component) *string { return &c.Vessel }),
	text("note", "a remark", false, mostProse, func(c *Component) *string { return &c.Note }),
}}

// vesselKey says of what a vessel is, as far as it touches what is drunk.
func vesselKey[T any](does string, field func(*T) *string) key[T] {
	return text("vessel", "of what the vessel is that "+does+": copper, unlined", false, mostName, field)
}

// components reads house-made parts into the drink. A component with faults is
// kept, without the lines and steps at fault, so that those who use it are not
// told that it does not exist.
func (r *reader) components(d *Drink, n ast.Node) {
	r.named(n, "components", componentNameFault, func(e entry) {
		if first, taken := d.Component(e.key); taken {
			r.faults.Add(e.at, "rename one of them", "there is a component %s already, at %s", quoted(e.key), first.Place)
			return
		}
		for _, first := range d.Components {
			twins(r.faults, "component", e, first.Name, first.Place)
		}
		c := Component{Name: e.key, Place: e.at}
		componentKeys.read(r, &c, e.value)
		d.Components = append(d.Components, c)
	})
}

// keeps reads "5 days at 4 °C" or "5 days".
func (r *values) keeps(n ast.Node, what string) *Keeps {
	text, ok := r.text(n, what, mostName)
	if !ok {
		return nil
	}
	long, cold, found := strings.Cut(text, " at ")
	k := Keeps{Place: r.nodeAt(n)}
	time, err := keeping.Parse(long)
	if err == nil && time.Number == 0 {
		err = fail.New(fail.Wrong, "keeps is zero", "leave the key out if it is not kept")
	}
	if err != nil {
		r.misread(k.Place, err)
		return nil
	}
	k.Days = time.Number * minutes[time.Unit] / minutes["day"]
	if !found {
		return &k
	}
	at, err := temperature.Parse(cold)
	if err != nil {
		r.faults.Join(r.inside(n, text, cold), err)
		return nil
	}
	k.At = &at
	return &k
}

// keeping is how long a component may be kept: at most ten years.
var keeping = unit.Scale{What: "a time", Units: []string{"days", "day", "h"}, High: 87_600, Example: "5 days at 4 °C"}
