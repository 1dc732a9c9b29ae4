package houserules

import (
	"slices"
	"strings"

	"sipsum/internal/allergen"
)

// allergen answers for one forbidden allergen, by what is declared of the drink under all of its rules.
func (c Case) allergen(word string) Line {
	l := Line{Key: "allergens", Rule: "forbidden allergen: " + word, Verdict: Pass, Why: "not found in what was assessed: no promise to a guest"}
	leaves := allergen.LeavesOf(word)
	asked := func(list []string) bool {
		return slices.ContainsFunc(list, func(leaf string) bool { return slices.Contains(leaves, leaf) })
	}
	var there, maybe []string
	for _, d := range c.Declarations {
		for _, e := range slices.Concat(d.Contains, d.NotDeclared) {
			if asked(e.Leaves) {
				there = once(there, "it is in "+strings.Join(foodsWith(e, leaves), ", "))
			}
		}
		for _, e := range d.Excepted {
			if asked(e.Leaves) {
				maybe = once(maybe, "what is made of it is in "+strings.Join(e.From, ", ")+", and the rules of "+strings.ToUpper(d.Rules)+" take that out: "+e.Note)
			}
		}
		for _, e := range d.MayContain {
			if asked(e.Leaves) {
				maybe = once(maybe, "it may get in at your bar (may-contain)")
			}
		}
		for _, k := range d.Check {
			if asked(k.Leaves) || len(k.Leaves) == 0 {
				maybe = once(maybe, k.Short())
				l.Settle = once(l.Settle, k.Answer)
			}
		}
	}
	switch {
	case len(there) > 0:
		l.Verdict, l.Why, l.Settle = Fails, strings.Join(there, "; "), nil
	case len(maybe) > 0:
		l.Verdict, l.Why = CannotTell, strings.Join(maybe, "; ")
	case len(c.Declarations) == 0:
		l.Verdict, l.Why = CannotTell, "nothing is declared under no rules"
	}
	return l
}

// foodsWith names the foods of an entry that hold one of some leaves.
func foodsWith(e allergen.Entry, leaves []string) []string {
	var foods []string
	for _, k := range e.Knowledge {
		if slices.Contains(leaves, k.Leaf) {
			foods = once(foods, k.Food)
		}
	}
	return foods
}

func once(list []string, text string) []string {
	if text == "" || slices.Contains(list, text) {
		return list
	}
	return append(list, text)
}
