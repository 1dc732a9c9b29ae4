package drink

import (
	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// This file reads what the designer wants of the drink: categories, claims,
// targets and what may vary. Expressions are kept verbatim.

var claimKeys = grammar[Claim]{"a claim", []key[Claim]{
	prose("say", "the sentence", func(c *Claim) *string { return &c.Say }),
	{"check", "the expression that decides it: serving(SUGAR) < 12 g, share(MALAC, \"cherry syrup\") >= 50 %, ph() between 3.6 and 4.2", true, textShape(mostProse), func(r *reader, c *Claim, n ast.Node) {
		c.Check, _ = r.expression(n, "check")
		c.CheckAt = r.inside(n, c.Check, c.Check)
	}},
}}

var varyKeys = grammar[Vary]{"an entry of vary", []key[Vary]{
	{"of", "the component or food, as its line has it", true, textShape(mostName), func(r *reader, v *Vary, n ast.Node) {
		v.Of, _ = r.name(n, "of")
	}},
	end("from", "the least", func(v *Vary) *unit.Amount { return &v.From }),
	end("to", "the most", func(v *Vary) *unit.Amount { return &v.To }),
}}

// expression reads a check. A number or a truth value alone checks nothing.
func (r *values) expression(n ast.Node, what string) (string, bool) {
	text, ok := r.text(n, what, mostProse)
	if ok && numberAlone(n) {
		r.faults.Add(r.nodeAt(n), "write an expression, such as serving(SUGAR) < 12 g", "%s is %s, which checks nothing", what, quoted(text))
		return "", false
	}
	return text, ok
}

func (r *reader) categories(n ast.Node, what string) []Category {
	var out []Category
	count := 0
	name := func(name string) (string, string) { return textFault(name, "the category's name", mostName) }
	r.named(n, what, name, func(e entry) {
		tags := r.texts(e.value, quoted(e.key))
		if before := count; before <= mostTags && before+len(tags) > mostTags {
			r.faults.Add(e.at, "name fewer", "the categories name more than %d constituents together", mostTags)
		}
		if count += len(tags); len(tags) > 0 && count <= mostTags {
			out = append(out, Category{Name: e.key, Place: e.at, Tags: tags})
		}
	})
	return out
}

func (r *reader) claims(n ast.Node, what string) []Claim {
	return readList(r, claimKeys, n, what, func(at fail.Place) Claim { return Claim{Place: at} })
}

func (r *reader) targets(n ast.Node, what string) []Target {
	entries, _ := r.list(n, what)
	var out []Target
	for _, e := range entries {
		if r.mapForLine(e) || r.runsOn(e) {
			continue
		}
		if text, ok := r.expression(e, "a target"); ok {
			out = append(out, Target{Place: r.nodeAt(e), Check: text})
		}
	}
	return out
}

func (r *reader) vary(n ast.Node, what string) []Vary {
	entries, _ := r.list(n, what)
	var out []Vary
	for _, e := range entries {
		v := Vary{Place: r.nodeAt(e)}
		if !readWhole(r, varyKeys, &v, e) {
			continue
		}
		if v.From.Measure.Kind != v.To.Measure.Kind || v.From.Base() >= v.To.Base() {
			r.faults.Add(v.Place, "write from: 10 g, to: 35 g", "from %s to %s is not a range", v.From, v.To)
			continue
		}
		out = append(out, v)
	}
	return out
}

// readList reads a list of maps and keeps those without fault; begin makes one at its place.
func readList[T any](r *reader, g grammar[T], n ast.Node, what string, begin func(at fail.Place) T) []T {
	entries, _ := r.list(n, what)
	var out []T
	for _, e := range entries {
		if into := begin(r.nodeAt(e)); readWhole(r, g, &into, e) {
			out = append(out, into)
		}
	}
	return out
}

// readWhole reads a map and tells whether it is without fault.
func readWhole[T any](r *reader, g grammar[T], into *T, n ast.Node) bool {
	before := r.faults.Len()
	_, ok := g.read(r, into, n)
	return ok && r.faults.Len() == before
}
