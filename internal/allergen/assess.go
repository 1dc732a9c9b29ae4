package allergen

import (
	"slices"
)

// Assessment is what is known of one food.
type Assessment struct {
	Knowledge Knowledge
	Leaves    []string            // present
	Likely    []string            // what a question leaves possible: to be checked
	Missed    []string            // in the name or the group but not in the statement: to be checked
	Lent      []string            // in what it borrows from but not in the statement: to be checked
	Cautions  []string            // caution marks, stated and inferred
	Rules     map[string][]string // ids of the rules that found a leaf or a caution mark, or that settle (key "")

	asked []*question
	named []string // leaves that the words of a name say, not the group alone
}

// Assess finds the allergen leaves and the caution marks of a food.
func Assess(it Item) Assessment {
	if it.known != nil {
		return *it.known
	}
	a := Assessment{Knowledge: NotAssessed, Rules: map[string][]string{}}
	found, settled := a.infer(it)
	marks, marked := it.stated(markAllergen)
	how := knowledgeOf(it)
	switch {
	case marked || it.Stated:
		a.Knowledge = how
		a.Missed = missed(marks, found)
		a.Leaves = marks
		if it.Lender != nil {
			a.Lent = missed(slices.Concat(marks, a.Missed), Assess(*it.Lender).Leaves)
		}
	case it.Chemical, settled && !it.Own:
		a.Knowledge = Inferred
		a.Leaves = found
	default:
		a.Leaves = found
	}
	if a.Knowledge != Stated { // who states what is in a pack has answered
		a.ask(it)
	}
	cautions, _ := it.stated(markCaution)
	for _, c := range cautions {
		a.Cautions = addOnce(a.Cautions, c)
	}
	slices.Sort(a.Cautions)
	return a
}

// Assessed assesses items once, for all who ask of them: every set of rules, and cautions.
func Assessed(items []Item) []Item {
	list := slices.Clone(items)
	for i := range list {
		of := Assess(list[i])
		list[i].known = &of
	}
	return list
}

// infer applies the rules and gives the leaves found, in catalogue order, and
// whether a rule settles the food.
func (a *Assessment) infer(it Item) (found []string, settled bool) {
	for i, words := range it.names() {
		for k := range markRules() {
			r := &markRules()[k]
			if !r.holds(it, words) {
				continue
			}
			if r.settles && i == 0 { // a further name may say less than the food is
				settled = true
				a.Rules[""] = addOnce(a.Rules[""], r.id)
			}
			for _, code := range r.leaves {
				found = addOnce(found, code)
				a.Rules[code] = addOnce(a.Rules[code], r.id)
				if r.names != nil {
					a.named = addOnce(a.named, code)
				}
			}
			for _, code := range r.cautions {
				a.Cautions = addOnce(a.Cautions, code)
				a.Rules[code] = addOnce(a.Rules[code], r.id)
			}
		}
	}
	return moreExact(found), settled
}

// ask notes the questions that are open, and what they leave possible.
func (a *Assessment) ask(it Item) {
	a.asked = questionsOf(it)
	for _, q := range a.asked {
		for _, code := range q.leaves {
			if !covered(code, a.Leaves) {
				a.Likely = addOnce(a.Likely, code)
				a.Rules[code] = addOnce(a.Rules[code], q.id)
			}
		}
	}
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

// covered reports whether a leaf is declared, under every set of rules, by the others.
func covered(code string, others []string) bool {
	return !slices.ContainsFunc(known().rules, func(rules string) bool { return !coveredUnder(rules, code, others) })
}

// coveredUnder reports whether declaring the others says what a set of rules asks of a leaf:
// its class, and where the cereal or the nut has to be named that one, or one that is more
// exact. Of a generic leaf nobody knows more than its class.
func coveredUnder(rules, code string, others []string) bool {
	exact := func(o string) bool { return o == code || IsLeaf(o) && known().leaves[o].partOf == code }
	return slices.ContainsFunc(others, exact) || !slices.ContainsFunc(classesOf(rules, code), func(class string) bool {
		named := known().classes[rules][class].naming != naming.class && !known().leaves[code].generic
		return named || !slices.ContainsFunc(others, func(o string) bool { return IsLeaf(o) && slices.Contains(classesOf(rules, o), class) })
	})
}

func addOnce(codes []string, code string) []string {
	if slices.Contains(codes, code) {
		return codes
	}
	return append(codes, code)
}
