package food

import (
	"cmp"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/unit"
)

// Foremost gives what a food states of a whole, such as its organic acids or its sugars: the total, if anybody has
// stated it, then the parts that it holds most of by mass, at most so many. What was titrated stands for the total
// of the acids where there is no other. A food without any of them gives the first part of which something else is
// stated: a trace, a limit, or that there is none. It gives nothing if nobody has stated anything.
//
// Nothing is added up: a part that nobody has looked for is no zero.
func (f *Food) Foremost(whole constituent.ID, parts int) []Value {
	var held, stated []Value
	for _, c := range constituent.Sums().Leaves(whole) {
		v, ok := f.Value(c.ID)
		switch {
		case ok && v.Amount > 0:
			held = append(held, v)
		case ok:
			stated = append(stated, v)
		}
	}
	slices.SortStableFunc(held, func(a, b Value) int { return cmp.Compare(grams(b), grams(a)) })
	held = held[:min(parts, len(held))]
	if v, ok := f.total(whole); ok {
		return append([]Value{v}, held...)
	}
	if len(held) > 0 {
		return held
	}
	return stated[:min(1, len(stated))]
}

// total is what a food states of a whole, or of what was titrated in its place.
func (f *Food) total(whole constituent.ID) (Value, bool) {
	v, ok := f.Value(whole)
	if !ok && whole == constituent.OrganicAcids {
		return f.Value(titratable)
	}
	return v, ok
}

// grams is the mass of a part.
func grams(v Value) float64 {
	perGram, _ := unit.PerGram(constituent.Must(v.Constituent).Unit) // parts of a mass are masses
	return v.Amount / perGram
}
