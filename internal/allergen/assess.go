package allergen

import (
	"slices"

	"sipsum/internal/phrase"
)

// Knowledge tells how the allergens of a food are known.
type Knowledge string

// The kinds of knowledge.
const (
	Stated      Knowledge = "stated"
	Inferred    Knowledge = "inferred"
	NotAssessed Knowledge = "not assessed"
)

// Assessment is what is known of one food.
type Assessment struct {
	Knowledge Knowledge
	Leaves    []string            // present
	Likely    []string            // inferred to be possible: to be checked
	Missed    []string            // in the name but not in the statement: to be checked
	Cautions  []string            // caution marks, stated and inferred
	Rules     map[string][]string // ids of the rules that found a leaf or a caution mark, or that settle (key "")
}

// Assess finds the allergen leaves and the caution marks of a food.
func Assess(it Item) Assessment {
	a := Assessment{Knowledge: NotAssessed, Rules: map[string][]string{}}
	found, settled := a.infer(it)
	marks, stated := it.stated(markAllergen)
	switch {
	case stated || it.Stated:
		a.Knowledge = Stated
		a.Missed = missed(marks, found)
		a.Leaves, a.Likely = marks, nil
	case it.Chemical, settled && !it.Own:
		a.Knowledge = Inferred
		a.Leaves = found
	default:
		a.Leaves = found
	}
	a.Likely = slices.DeleteFunc(a.Likely, func(code string) bool { return covered(code, a.Leaves) })
	cautions, _ := it.stated(markCaution)
	for _, c := range cautions {
		a.Cautions = addOnce(a.Cautions, c)
	}
	slices.Sort(a.Cautions)
	return a
}

// infer applies the rules and gives the leaves found, in catalogue order, and
// whether a rule settles the food.
func (a *Assessment) infer(it Item) (found []string, settled bool) {
	names := append([]string{it.Name}, it.Names...)
	for i, name := range names {
		words := phrase.Words(name)
		for k := range markRules() {
			r := &markRules()[k]
			if !r.matches(it, words) {
				continue
			}
			if r.settles && i == 0 { // a further name may say less than the food is
				settled = true
				a.Rules[""] = addOnce(a.Rules[""], r.id)
			}
			for _, code := range r.leaves {
				found = addOnce(found, code)
				a.Rules[code] = addOnce(a.Rules[code], r.id)
			}
			for _, code := range r.likely {
				a.Likely = addOnce(a.Likely, code)
				a.Rules[code] = addOnce(a.Rules[code], r.id)
			}
			for _, code := range r.cautions {
				a.Cautions = addOnce(a.Cautions, code)
				a.Rules[code] = addOnce(a.Rules[code], r.id)
			}
		}
	}
	return moreExact(found), settled
}

// moreExact drops a leaf where another one says the same more exactly, and
// sorts the rest in catalogue order.
func moreExact(codes []string) []string {
	var kept []string
	for _, code := range known().order {
		if slices.Contains(codes, code) && !slices.ContainsFunc(codes, func(c string) bool { return known().leaves[c].partOf == code }) {
			kept = append(kept, code)
		}
	}
	return kept
}

// missed gives the inferred leaves that no stated leaf covers.
func missed(stated, inferred []string) []string {
	var out []string
	for _, code := range inferred {
		if !covered(code, stated) {
			out = append(out, code)
		}
	}
	return out
}

// covered reports whether a leaf is declared, under every set of rules, by the
// class of one of the others.
func covered(code string, others []string) bool {
	for _, rules := range known().rules {
		class := known().leaves[code].classes[rules]
		if class == "" {
			continue
		}
		if !slices.ContainsFunc(others, func(o string) bool {
			l := known().leaves[o]
			return l != nil && l.classes[rules] == class
		}) {
			return false
		}
	}
	return true
}

func addOnce(codes []string, code string) []string {
	if slices.Contains(codes, code) {
		return codes
	}
	return append(codes, code)
}
