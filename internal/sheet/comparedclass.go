package sheet

import (
	"slices"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/clean"
)

// ClassChange is a class of allergens that stands otherwise in the two drinks, or of which one holds another
// leaf: who reacts to pecans is not told by "nuts, as before".
type ClassChange struct {
	Code, Name         string
	A, B               allergen.State
	OnlyA, OnlyB       []string // the words of what only one contains
	MayOnlyA, MayOnlyB []string // of what may get in only there
}

// Classes tells under one of the rules, by its place among them, which classes of allergens stand
// otherwise.
func (c *Compared) Classes(rules int) []ClassChange {
	a, b := c.A.Allergens()[rules], c.B.Allergens()[rules]
	var list []ClassChange
	for _, class := range allergen.Classes(c.A.Rules[rules]) {
		x := ClassChange{Code: class.Code, Name: class.Name, A: a.State(class.Code), B: b.State(class.Code)}
		inA, mayA := a.Within(class.Code)
		inB, mayB := b.Within(class.Code)
		x.OnlyA, x.OnlyB = besideThose(inA, inB), besideThose(inB, inA)
		x.MayOnlyA, x.MayOnlyB = besideThose(mayA, mayB), besideThose(mayB, mayA)
		if x.A != x.B || x.leaves("", "") != "" {
			list = append(list, x)
		}
	}
	return list
}

// besideThose gives the words of a list that another has not.
func besideThose(list, other []string) []string {
	return slices.DeleteFunc(slices.Clone(list), func(word string) bool { return slices.Contains(other, word) })
}

// said tells how a class stands in two drinks, each as it is called there, and what only one has of it.
func (x ClassChange) said(a, b string) string {
	text := stateWords[x.A] + " " + a + ", " + stateWords[x.B] + " " + b
	if x.A == x.B {
		text = stateWords[x.A] + " " + a + " and " + b
	}
	return text + x.leaves(a, b)
}

// leaves tells what only one of the drinks has of a class.
func (x ClassChange) leaves(a, b string) string {
	text := ""
	for _, of := range []struct {
		lead, in string
		words    []string
	}{{"only ", a, x.OnlyA}, {"only ", b, x.OnlyB}, {"may get in only ", a, x.MayOnlyA}, {"may get in only ", b, x.MayOnlyB}} {
		if len(of.words) > 0 {
			text += "; " + of.lead + of.in + ": " + clean.Prose(strings.Join(of.words, ", "))
		}
	}
	return text
}
