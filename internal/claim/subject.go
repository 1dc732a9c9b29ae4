package claim

import "strings"

// Subject gives the figure that a condition is about: the first side of a comparison that is no
// number alone. Nil where it asks for an allergen only.
func (c *Claim) Subject() *Goal {
	comparisons := comparisonsOf(c.truth)
	for _, cmp := range comparisons {
		for _, q := range cmp.terms {
			if _, bare := q.(literal); !bare {
				return &Goal{of: q, from: c, unit: writtenUnit(cmp)}
			}
		}
	}
	return nil
}

// Limit gives the number that a single comparison holds its figure to, and whether the figure is to
// stay below it; ok is false where both sides are figures, or it is no single comparison.
func (c *Claim) Limit() (x float64, below, ok bool) {
	cmp, is := c.truth.(comparison)
	if !is || len(cmp.orders) != 1 {
		return 0, false, false
	}
	less := cmp.orders[0][0] == '<'
	if l, is := cmp.terms[1].(literal); is {
		return l.value, less, true
	}
	if l, is := cmp.terms[0].(literal); is {
		return l.value, !less, true
	}
	return 0, false, false
}

// Settles finds the unknown without which the ends of an outcome come nearest to each other; nil if
// nothing of it is unknown.
func (c *Claim) Settles(env Env, o Outcome) (*Gap, error) {
	first, _, err := c.settling(env, o)
	return first, err
}

// comparisonsOf lists the comparisons of a truth, in its order.
func comparisonsOf(t truth) []comparison {
	switch t := t.(type) {
	case comparison:
		return []comparison{t}
	case joined:
		return append(comparisonsOf(t.a), comparisonsOf(t.b)...)
	case denial:
		return comparisonsOf(t.a)
	}
	return nil
}

// writtenUnit is the unit in which a comparison writes a number; "" if it writes none.
func writtenUnit(c comparison) string {
	for _, q := range c.terms {
		if l, ok := q.(literal); ok && l.unit != "" {
			return l.unit
		}
	}
	return ""
}

// Unit is in what a figure is told, and how many grams, millilitres or kilojoules that is: as the
// number is written that it is held to, else as its constituent is counted.
func (g *Goal) Unit() (name string, base float64) {
	if d, base, ok := measure(g.unit); g.unit != "" && ok && d == g.of.of() {
		return g.unit, base
	}
	f, single := g.of.(figure)
	usual := map[dimension]string{ofMass: "g", ofVolume: "ml", ofEnergy: "kJ", ofBrix: "°Bx", concentration: "g/l", ofSweetness: "%"}[g.of.of()]
	switch {
	case single && g.of.of() == ofMass && len(f.tags) > 0:
		usual = f.tags[0].Unit
	case single && g.of.of() == plain && told[f.function.name].unit != "":
		usual = told[f.function.name].unit
	}
	if _, base, ok := measure(usual); ok && usual != "" {
		return usual, base
	}
	return "", 1
}

// told is how figures are named to people, and in what a bare one is told.
var told = map[string]struct{ words, unit string }{
	"serving": {words: "{}"}, "per100g": {words: "{} in 100 g"}, "per100ml": {words: "{} in 100 ml"},
	"component": {words: "{} of {part}"}, "share": {"share of {part} in {}", "%"}, "ratio": {words: "{}"},
	"mass": {words: "mass"}, "volume": {words: "volume"}, "ph": {words: "pH"}, "ta": {words: "acidity"},
	"brix": {words: "sugar by refractometer"}, "brix_acid": {words: "°Brix over acidity"}, "alcohol_abv": {"alcohol", "% vol"}, "sweetness": {words: "sweetness as sucrose"},
}

// Property gives the property of the liquid that a figure is; "" if it is another, or calculated of
// several.
func (g *Goal) Property() Property {
	if f, single := g.of.(figure); single && f.function.takes == "" {
		return Property(f.function.name)
	}
	return ""
}

// Words name a figure: "sugars", "malic acid of cherry syrup", "pH"; what is calculated of several
// stands as it is written.
func (g *Goal) Words() string {
	f, single := g.of.(figure)
	if !single || told[f.function.name].words == "" {
		return written(g.of)
	}
	var tags []string
	for _, t := range f.tags {
		tags = append(tags, t.Words())
	}
	text := strings.Replace(told[f.function.name].words, "{}", strings.Join(tags, " to "), 1)
	return strings.Replace(text, "{part}", f.part.Name, 1)
}

// written writes a figure as an expression does.
func written(q quantity) string {
	switch q := q.(type) {
	case literal:
		return q.text
	case arithmetic:
		if l, ok := q.a.(literal); ok && l.text == "" { // a minus before a figure
			return q.sign + written(q.b)
		}
		a, b := written(q.a), written(q.b)
		if strings.Contains("*/", q.sign) {
			a, b = bracketed(q.a, a), bracketed(q.b, b)
		}
		return a + " " + q.sign + " " + b
	case figure:
		var takes []string
		tags := q.tags
		for _, t := range q.function.takes {
			if t == 't' {
				takes, tags = append(takes, string(tags[0].ID)), tags[1:]
				continue
			}
			takes = append(takes, `"`+q.part.Name+`"`)
		}
		return q.function.name + "(" + strings.Join(takes, ", ") + ")"
	}
	panic("claim: no such figure")
}

func bracketed(q quantity, text string) string {
	if a, ok := q.(arithmetic); ok && strings.Contains("+-", a.sign) {
		return "(" + text + ")"
	}
	return text
}
