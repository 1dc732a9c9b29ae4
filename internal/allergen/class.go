package allergen

import (
	"cmp"
	"slices"
)

// Class is what a set of rules declares, as a column of a table of drinks.
type Class struct {
	Code   string
	Name   string
	Status string // of its reference: "verified", "secondary" or "unverified"
	Source string
	Named  bool // the rules want the cereal, the nut or the fish named, not only the class
}

// Classes gives the classes of a set of rules in their order, none if nobody knows the rules.
func Classes(rules string) []Class {
	var list []Class
	for _, c := range known().classes[rules] {
		list = append(list, Class{c.code, c.name, c.status, c.source, c.naming != naming.class})
	}
	slices.SortFunc(list, func(x, y Class) int {
		return cmp.Compare(known().classes[rules][x.Code].order, known().classes[rules][y.Code].order)
	})
	return list
}

// State is what is known of one class in a drink: a word, never a blank.
type State string

// The states, the gravest first.
const (
	StateContains   State = "contains"
	StateMayContain State = "may contain"
	StateCheck      State = "to check"
	StateNoneFound  State = "none found"
)

// States gives every state with what it means, the gravest first.
func States() []struct{ State, Means string } {
	return []struct{ State, Means string }{
		{string(StateContains), "it is in an ingredient"},
		{string(StateMayContain), "it may get in by cross-contact, as the designer states"},
		{string(StateCheck), "somebody has to decide: a food is not assessed, or a question about it is open"},
		{string(StateNoneFound), "no ingredient that was assessed has it, as far as is known: that is not a promise"},
	}
}

// Named gives the words by which a list of ingredients names the allergens of a food: that of
// the class, or of the cereal or nut where the rules want it named.
func (d Declaration) Named(food string) []string {
	var words []string
	for _, e := range d.Contains {
		for _, k := range e.Knowledge {
			if k.Food != food {
				continue
			}
			l := known().leaves[k.Leaf]
			word := l.under[d.Rules].name
			if word == "" && known().classes[d.Rules][e.Code].naming == naming.class {
				word = known().classes[d.Rules][e.Code].name
			}
			words = addOnce(words, cmp.Or(word, l.word))
		}
	}
	return words
}

// Within gives the words of what is in a class of the declaration's rules, and of what may get in
// beside it: the nut, the cereal, the animal, each as the rules name it.
func (d Declaration) Within(class string) (contains, may []string) {
	words := func(entries []Entry) []string {
		var list []string
		for _, e := range entries {
			if e.Code != class {
				continue
			}
			for _, code := range e.Leaves {
				l := known().leaves[code]
				list = addOnce(list, cmp.Or(l.under[d.Rules].name, l.word))
			}
		}
		return list
	}
	return words(d.Contains), words(d.MayContain)
}

// State gives what is known of a class of the declaration's rules. A question about the class
// comes before a stated cross-contact: it may be an ingredient. A food that nobody assessed can
// hold anything, so it leaves no class as not found.
func (d Declaration) State(class string) State {
	of := func(entries []Entry) bool {
		return slices.ContainsFunc(entries, func(e Entry) bool { return e.Code == class })
	}
	asks := func(c Check) bool {
		return slices.ContainsFunc(c.Leaves, func(leaf string) bool { return slices.Contains(classesOf(d.Rules, leaf), class) })
	}
	open := func(c Check) bool { return c.Code == CheckNotAssessed }
	switch {
	case of(d.Contains):
		return StateContains
	case slices.ContainsFunc(d.Check, asks):
		return StateCheck
	case of(d.MayContain):
		return StateMayContain
	case slices.ContainsFunc(d.Check, open):
		return StateCheck
	}
	return StateNoneFound
}
