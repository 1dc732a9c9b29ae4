package allergen

import (
	"cmp"
	"slices"
)

// Class is what a set of rules declares, by its code and by the name that the rules print.
type Class struct{ Code, Name string }

// Classes gives what a set of rules declares, in the order of the rules.
func Classes(rules string) []Class {
	list := make([]class, 0, len(known().classes[rules]))
	for _, c := range known().classes[rules] {
		list = append(list, c)
	}
	slices.SortFunc(list, func(a, b class) int { return cmp.Or(cmp.Compare(a.order, b.order), cmp.Compare(a.code, b.code)) })
	out := make([]Class, len(list))
	for i, c := range list {
		out[i] = Class{c.code, c.name}
	}
	return out
}

// State is what a declaration says of a class.
type State string

// The states. None of them says that a class is absent.
const (
	Contains   State = "contains"
	MayContain State = "may contain" // cross-contact that the designer stated
	ToCheck    State = "to check"    // somebody has to look first
	NoneFound  State = "none found"  // in the foods that were assessed
)

// State says how a drink stands to a class of the declaration's rules. What is likely or
// contradicted comes before a stated cross-contact: it may be an ingredient. A food that
// nobody assessed can hold anything, so it leaves no class as not found.
func (d *Declaration) State(class string) State {
	named := func(e Entry) bool { return e.Code == class }
	asks := func(c Check) bool { return c.Leaf != "" && known().leaves[c.Leaf].classes[d.Rules] == class }
	open := func(c Check) bool { return c.Leaf == "" }
	switch {
	case slices.ContainsFunc(d.Contains, named):
		return Contains
	case slices.ContainsFunc(d.Check, asks):
		return ToCheck
	case slices.ContainsFunc(d.MayContain, named):
		return MayContain
	case slices.ContainsFunc(d.Check, open):
		return ToCheck
	}
	return NoneFound
}
