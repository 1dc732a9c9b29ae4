package drink

import (
	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// The steps of cold, of koji and of clear liquids.

var chillKind = stepWith(StepEntry{"chill", "melt ice into it: {melt: 30 g} as weighed, or {from: 70 °C, to: 4 °C} by the heat that it takes, but for what is stirred", "- chill: {melt: 30 g}"}, grammar[Chill]{keys: []key[Chill]{
	mass("melt", "the mass of ice that melts", func(s *Chill) **unit.Amount { return &s.Melt }),
	scaled("from", "the temperature before", temperature, func(s *Chill) **Quantity { return &s.From }),
	scaled("to", "the temperature after, at rest with the ice", temperature, func(s *Chill) **Quantity { return &s.To }),
	{"ice", "the temperature of the ice; 0 °C if it is left out", false, quantityShape(temperature), func(r *reader, s *Chill, n ast.Node) {
		s.Ice = iceOf(&r.values, n)
	}},
}}, func(p present) (string, string) {
	switch melt, ends := p.count("melt"), p.count("from", "to"); {
	case melt+ends/2 != 1 || ends%2 != 0:
		return "needs melt, or from and to together", ""
	case melt == 1 && p.has("ice"):
		return "has melt and ice", "take ice out: what melted was weighed"
	}
	return "", ""
})

// iceOf reads how cold the ice is. Whoever writes a mass means what was put in, and what melts of it
// is another.
func iceOf(r *values, n ast.Node) *Quantity {
	if text, ok := raw(n); ok && isAmount(text) {
		r.faults.Add(r.nodeAt(n), "write: "+lineOf("chill", nil, nil)+", what melts of it: weigh the ice before and after; or - chill: {from: … °C, to: … °C}, and it is calculated", "ice is how cold the ice is, and not how much of it there is")
		return nil
	}
	return r.quantity(n, "ice", temperature)
}

var coolKind = stepWith(StepEntry{"cool", "cool it without ice or water: {to: 4 °C}", "- cool: {to: 4 °C}"}, grammar[Cool]{keys: []key[Cool]{
	scaledValue("to", "the temperature after", temperature, func(s *Cool) *Quantity { return &s.To }),
}}, nil)

var convertKind = stepWith(StepEntry{"convert", "split starch by amylase or koji: {starch: 60 %, to: glucose}; to: glucose or maltose", "- convert: {starch: 60 %, to: glucose}"}, grammar[Convert]{keys: append([]key[Convert]{
	scaledValue("starch", "the share of the starch that is split", percent, func(s *Convert) *Quantity { return &s.Starch }),
	word("to", "the sugar that it becomes", true, []string{"glucose", "maltose"}, func(s *Convert) *string { return &s.To }),
}, toldKeys[Convert]()...)}, nil)

// Ways to clarify. All but a centrifuge take an agent.
const (
	ByMilk       = "milk"
	ByCentrifuge = "centrifuge"
)

var clarifyKind = withAgent(stepWith(StepEntry{"clarify", "take out what makes it cloudy: {by: agar, with: 0.4 g core:agar, collect: 180 g}; by: milk, egg white, gelatine, agar or centrifuge", "- clarify: {by: agar, with: 0.4 g core:agar, collect: 180 g}"}, grammar[Clarify]{keys: []key[Clarify]{
	word("by", "what clarifies it", true, []string{ByMilk, "egg white", "gelatine", "agar", ByCentrifuge}, func(s *Clarify) *string { return &s.By }),
	{"with", "the agent as it is stirred in; a centrifuge has none", false, oneOrMoreShape, func(r *reader, s *Clarify, n ast.Node) {
		s.Ingredients = r.oneOrMore(n, "with", s.StepPath())
	}},
	massValue("collect", "the mass of the clear liquid", func(s *Clarify) *unit.Amount { return &s.Collect }),
	scaled("at", "the temperature", temperature, func(s *Clarify) **Quantity { return &s.Temperature }),
}}, nil))

// withAgent holds a step of clarify to its agent: a centrifuge has none, all else has one.
func withAgent(k stepKind) stepKind {
	read := k.read
	k.read = func(r *reader, head Head, n ast.Node) (Step, bool) {
		s, ok := read(r, head, n)
		if !ok || r.torn {
			return s, ok
		}
		switch c := s.(*Clarify); {
		case c.By == ByCentrifuge && len(c.Ingredients) > 0:
			r.faults.Add(head.Place, "take with: out; what is stirred in stays in the pot: - add: …", "a centrifuge takes no agent")
		case c.By != ByCentrifuge && len(c.Ingredients) == 0:
			r.faults.Add(head.Place, "write with: and how much of it is stirred in: - clarify: {by: "+c.By+", with: … g FOOD, collect: "+c.Collect.String()+"}", "clarify by %s does not say how much %s", c.By, c.By)
		default:
			return s, true
		}
		return nil, false
	}
	return k
}

// Curdles reports whether a step parts milk.
func Curdles(s Step) bool {
	switch s := s.(type) {
	case *Curdle:
		return true
	case *Clarify:
		return s.By == ByMilk
	}
	return false
}

// gasTechniques are what a charge is called in the words of techniques.
var gasTechniques = map[string][]string{NitrousOxide: {"n2o"}, Nitrogen: {"nitrogen charged"}}

// Techniques gives what a step is called in the words of techniques: what a designer wrote,
// or how a step is done.
func Techniques(s Step) []string {
	switch s := s.(type) {
	case *Treat:
		return []string{s.Technique}
	case *Clarify:
		return []string{s.By}
	case *Concentrate:
		return []string{s.By + " concentrated"}
	case *Foam:
		return append([]string{"foamed"}, gasTechniques[s.Gas]...)
	}
	return nil
}
