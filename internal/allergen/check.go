package allergen

import "slices"

// checkList gathers what is to be checked: first foods that nobody assessed,
// then contradictions, then leaves that are likely.
type checkList struct {
	notAssessed []string
	contradicts []Check
	possible    []Check
}

func (l *checkList) add(rules string, it Item, a Assessment) {
	id := it.Food.String()
	if a.Knowledge == NotAssessed {
		l.notAssessed = addOnce(l.notAssessed, id)
	}
	declared := func(code string) bool { return known().leaves[code].classes[rules] != "" }
	for _, code := range a.Missed {
		if !declared(code) {
			continue
		}
		l.contradicts = note(l.contradicts, CheckContradicts, rules, code, id,
			"The name of the food says more than its list of allergens: correct one of them.", "")
	}
	for _, code := range a.Likely {
		if !declared(code) {
			continue
		}
		why, source := reason(a.Rules[code])
		l.possible = note(l.possible, CheckPossible, rules, code, id, why, source)
	}
}

func note(checks []Check, code, rules, leafCode, id, text, source string) []Check {
	i := slices.IndexFunc(checks, func(c Check) bool { return c.Leaf == leafCode && c.Text == text })
	if i >= 0 {
		checks[i].Foods = addOnce(checks[i].Foods, id)
		return checks
	}
	name := known().classes[rules][known().leaves[leafCode].classes[rules]].name
	return append(checks, Check{Code: code, Leaf: leafCode, Name: name, Foods: []string{id}, Text: text, Source: source})
}

// reason gives the text and the source of the first of the rules.
func reason(ids []string) (why, source string) {
	for i := range markRules() {
		if r := &markRules()[i]; slices.Contains(ids, r.id) {
			return r.why, r.source
		}
	}
	return "", ""
}

func (l *checkList) all() []Check {
	out := []Check{}
	if len(l.notAssessed) > 0 {
		out = append(out, Check{
			Code: CheckNotAssessed, Foods: l.notAssessed,
			Text: "Nobody has stated what these foods hold, and no rule settles it from their names: read their labels, or write them as foods of your own with a list of allergens.",
		})
	}
	out = append(out, l.contradicts...)
	return append(out, l.possible...)
}
