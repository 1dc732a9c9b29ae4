package drink

import (
	"fmt"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// Coffee is what is known of a coffee besides its figures.
type Coffee struct {
	Place    fail.Place
	Species  string // of CoffeeSpecies, "" if not stated
	Process  string
	Roast    *Roast // nil if not stated
	Origin   string
	Altitude *Quantity // m; nil if not stated
	Lab      *Lab      // nil if no laboratory looked
}

// Roast is how far a coffee was roasted: by the mass it lost, by a colour number, or in a word.
type Roast struct {
	Loss   *Quantity // % of the green mass
	Colour *Quantity // on Scale
	Scale  string
	Called string // of RoastNames
}

// Lab is what a laboratory found, in what the food's values refer to.
type Lab struct {
	Place  fail.Place
	Values []Stated
	Source string
}

// The closed lists of a coffee's facts.
var (
	CoffeeSpecies = []string{"arabica", "robusta", "liberica"}
	RoastNames    = []string{"light", "medium", "dark"}
	processes     = []string{"washed", "natural", "honey", "wet-hulled", "anaerobic", "carbonic maceration"}
	colourScales  = []string{"agtron gourmet", "agtron commercial", "CIE L*"}
)

var (
	altitudeScale = unit.Scale{What: "an altitude", Units: []string{"m"}, Low: 0, High: 4000, Example: "1900 m"}
	lossScale     = unit.Scale{What: "a loss of mass", Units: []string{"%"}, Limit: "loss of a roast", Example: "14 %"}
	colourNumber  = unit.Scale{What: "a colour number", Units: []string{""}, Low: 0, High: 1000, Example: "62"} // each scale has a range of its own
)

var coffeeKeys = grammar[Coffee]{"coffee", []key[Coffee]{
	word("species", "the species of the plant", false, CoffeeSpecies, func(c *Coffee) *string { return &c.Species }),
	word("process", "how the fruit was taken off the seed", false, processes, func(c *Coffee) *string { return &c.Process }),
	{"roast", "how far it was roasted: the mass it lost, a colour number with its scale, or a word", false, roastKeys.shape(), func(r *reader, c *Coffee, n ast.Node) {
		c.Roast = r.roast(n)
	}},
	text("origin", "where it was grown", false, mostName, func(c *Coffee) *string { return &c.Origin }),
	scaled("altitude", "how high it was grown", altitudeScale, func(c *Coffee) **Quantity { return &c.Altitude }),
	{"lab", "what a laboratory found, in as much as the food's values refer to", false, labKeys.shape(), func(r *reader, c *Coffee, n ast.Node) {
		lab := &Lab{Place: r.nodeAt(n)}
		if _, ok := labKeys.read(r, lab, n); ok {
			c.Lab = lab
		}
	}},
}}

var roastKeys = grammar[Roast]{"roast", []key[Roast]{
	scaled("loss", "the share of its mass that the green coffee lost", lossScale, func(o *Roast) **Quantity { return &o.Loss }),
	scaled("colour", "the number of a colour meter or of the nearest disk", colourNumber, func(o *Roast) **Quantity { return &o.Colour }),
	word("scale", "the scale of the colour number", false, colourScales, func(o *Roast) *string { return &o.Scale }),
	word("called", "what the roaster calls it", false, RoastNames, func(o *Roast) *string { return &o.Called }),
}}

var labKeys = grammar[Lab]{"lab", []key[Lab]{
	into("values", "constituents as the laboratory prints them", true, mapOf(statedShape), (*reader).figures, func(l *Lab) *[]Stated { return &l.Values }),
	prose("source", "the laboratory and the number of its report", func(l *Lab) *string { return &l.Source }),
}}

// coffee reads what is known of a coffee.
func (r *reader) coffee(n ast.Node) *Coffee {
	c, before := &Coffee{Place: r.nodeAt(n)}, r.faults.Len()
	found, ok := coffeeKeys.read(r, c, n)
	if ok && len(found) == 0 && r.faults.Len() == before && !r.torn {
		r.faults.Add(c.Place, "give a fact: "+fail.Or(coffeeKeys.names()), "coffee holds no fact")
	}
	if !ok {
		return nil
	}
	return c
}

// roast reads a roast: by its loss or in a word, and a colour number, which may stand beside either,
// with its scale.
func (r *reader) roast(n ast.Node) *Roast {
	o, before := &Roast{}, r.faults.Len()
	found, ok := roastKeys.read(r, o, n)
	if !ok || r.faults.Len() > before || r.torn {
		return nil
	}
	switch {
	case !found.has("loss") && !found.has("colour") && !found.has("called"):
		r.faults.Add(r.nodeAt(n), "write roast: {loss: 14 %}", "roast says neither loss, colour nor called")
		return nil
	case found.has("loss") && found.has("called"):
		r.faults.Add(found["called"], "keep the loss, which was measured", "roast says both loss and called")
		return nil
	case found.has("colour") != found.has("scale"):
		r.faults.Add(r.nodeAt(n), "write roast: {colour: 62, scale: "+colourScales[0]+"}, the scale one of "+fail.Or(colourScales), "a colour number and its scale go together")
		return nil
	}
	if o.Colour != nil {
		if span := unit.LimitOf("colour number", o.Scale); !span.Holds(o.Colour.Number) {
			r.faults.Add(found["colour"], fmt.Sprintf("it lies between %g and %g", span.Low, span.High), "%g is no number of the scale %s", o.Colour.Number, o.Scale)
			return nil
		}
	}
	return o
}
