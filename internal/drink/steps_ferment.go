package drink

import (
	"maps"
	"strings"

	"github.com/goccy/go-yaml/ast"
)

// A ferment is told by what 100 g hold afterwards, or by what was read before and after.
var fermentKind = because(stepWith(StepEntry{
	"ferment", "turn sugars into alcohol and acids: {before: {brix: 18}, after: {brix: 8, ph: 3.4}} as read, or {after: {ALC: 0.5 g}, because: \"…\"} as stated",
	"- ferment: {before: {brix: 18}, after: {brix: 8, ph: 3.4}}",
}, grammar[Ferment]{keys: []key[Ferment]{
	{"before", "what was read before it", false, measuredShape, func(r *reader, s *Ferment, n ast.Node) {
		if m, ok := readMeasured(r, s.aside("before"), n); ok {
			s.before = m
		}
	}},
	{"after", "what was read afterwards, and what 100 g of the pot hold then", true, afterShape(), func(r *reader, s *Ferment, n ast.Node) {
		r.afterwards(s, n)
	}},
	scaled("at", "the temperature", temperature, func(s *Ferment) **Quantity { return &s.Temperature }),
	lasting("for", "how long", func(s *Ferment) **Quantity { return &s.Minutes }),
	text("because", "where the figures come from; not needed for what was read", false, mostProse, func(s *Ferment) *string { return &s.Because }),
}}, nil))

// afterKeys are the readings that may stand among the figures of a ferment.
var afterKeys = grammar[Measured]{"after", measuredOf("brix", "abv", "ph", "ta", "density")}

// measuredOf gives some of the keys of measured.
func measuredOf(names ...string) []key[Measured] {
	var keys []key[Measured]
	for _, name := range names {
		for _, k := range measuredKeys.keys {
			if k.name == name {
				keys = append(keys, k)
			}
		}
	}
	return keys
}

// afterShape is a map of readings and constituents.
func afterShape() shape {
	s := maps.Clone(afterKeys.shape())
	s["additionalProperties"] = statedShape
	return s
}

// afterwards reads what is known of the pot after a ferment: readings, and constituents.
func (r *reader) afterwards(s *Ferment, n ast.Node) {
	read := &Measured{Head: s.aside("after")}
	others, before := false, r.faults.Len()
	r.named(n, "after", tagFault, func(e entry) {
		for _, k := range afterKeys.keys {
			if strings.EqualFold(k.name, e.key) {
				k.read(r, read, e.value)
				others = others || k.name != "brix" && k.name != "abv"
				return
			}
		}
		if v, ok := r.stated(e); ok {
			s.Figures = append(s.Figures, v)
		}
	})
	s.Brix, s.ABV, read.Brix, read.ABV = read.Brix, read.ABV, nil, nil
	if others {
		s.after = read
	}
	if s.Brix == nil && s.ABV == nil && len(s.Figures) == 0 && !r.torn && r.faults.Len() == before {
		r.faults.Add(r.nodeAt(n), "write after: {brix: 8}, after: {abv: 5 %} or after: {ALC: 0.5 g}", "ferment does not say what it made")
	}
}

// aside gives the head of a reading that a step holds.
func (h Head) aside(name string) Head {
	return Head{Word: measuredKind.Word, Place: h.Place, Path: h.Path + "/" + name}
}

// because holds a ferment to a reason for what is stated and was not read.
func because(k stepKind) stepKind {
	read := k.read
	k.read = func(r *reader, head Head, n ast.Node) (Step, bool) {
		s, ok := read(r, head, n)
		if !ok {
			return nil, false
		}
		if f := s.(*Ferment); len(f.Figures) > 0 && f.Because == "" && !r.torn {
			r.faults.Add(r.nodeAt(n), "add because: where the figures come from", "ferment needs \"because\"")
			return nil, false
		}
		return s, true
	}
	return k
}

// withReadings gives a step with the readings that it holds before and after itself.
func withReadings(s Step) []Step {
	f, ok := s.(*Ferment)
	if !ok {
		return []Step{s}
	}
	var list []Step
	if f.before != nil {
		list = append(list, f.before)
	}
	list = append(list, f)
	if f.after != nil {
		list = append(list, f.after)
	}
	return list
}
