package allergen

import (
	"slices"
	"strings"

	"sipsum/internal/fail"
)

// checkList gathers what is to be checked: first foods that nobody assessed,
// then contradictions, then questions.
type checkList struct {
	rules       string
	notAssessed *Check
	contradicts []Check
	possible    []Check
}

func (l *checkList) add(it Item, a Assessment) {
	if a.Knowledge == NotAssessed {
		if l.notAssessed == nil {
			l.notAssessed = &Check{
				Code:   CheckNotAssessed,
				Text:   "Nobody has stated what these foods hold, and no rule settles it from their names.",
				Answer: "Read their labels, or write them as foods of your own with a list of allergens.",
			}
		}
		l.notAssessed.of(it)
	}
	for _, code := range a.Missed {
		if coveredUnder(l.rules, code, a.Leaves) || exceptionOf(l.rules, code, it) != nil {
			continue
		}
		says := "group"
		if slices.Contains(a.named, code) {
			says = "name"
		}
		l.contradicts = note(l.contradicts, it, Check{
			Code: CheckContradicts, Leaves: []string{code}, says: "the " + says + " says", Text: "The " + says + " of the food says more than its list of allergens: correct one of them.",
		})
	}
	for _, code := range a.Lent {
		if !declared(l.rules, code) || coveredUnder(l.rules, code, a.Leaves) || exceptionOf(l.rules, code, *it.Lender) != nil {
			continue
		}
		l.contradicts = note(l.contradicts, it, Check{
			Code: CheckLent, Leaves: []string{code}, says: "what it borrows from, " + it.Lender.Food.String() + ", holds",
			Text: "What the food borrows from holds what its list of allergens leaves out: borrow from a food without it, or add it to the list.",
		})
	}
	for _, q := range a.asked {
		left := q.open(l.rules, it, a)
		if len(left) == 0 || slices.ContainsFunc(a.asked, func(other *question) bool { return wider(other.open(l.rules, it, a), left) }) {
			continue
		}
		l.possible = note(l.possible, it, Check{
			Code: CheckPossible, Leaves: left, Question: q.asks, Text: q.why, Answer: answer(it, a), Source: q.source,
		})
	}
}

// wider reports whether some leaves hold all of others, and more.
func wider(some, others []string) bool {
	return len(some) > len(others) && !slices.ContainsFunc(others, func(leaf string) bool { return !slices.Contains(some, leaf) })
}

// note adds a check, or the food to one that asks the same.
func note(checks []Check, it Item, c Check) []Check {
	i := slices.IndexFunc(checks, func(have Check) bool {
		return slices.Equal(have.Leaves, c.Leaves) && have.Text == c.Text && have.says == c.says && have.Question == c.Question
	})
	if i < 0 {
		checks = append(checks, c)
		i = len(checks) - 1
	}
	checks[i].of(it)
	return checks
}

// of adds a food, and where it is written.
func (c *Check) of(it Item) {
	if id := it.Food.String(); !slices.Contains(c.Foods, id) {
		c.Foods = append(c.Foods, id)
		if it.Place != (fail.Place{}) {
			c.Places = append(c.Places, it.Place)
		}
	}
}

// name gives the checks the first of their leaves, and the names of their classes.
func (l *checkList) name() {
	for _, list := range [][]Check{l.contradicts, l.possible} {
		for i := range list {
			list[i].name(l.rules)
		}
	}
}

// Short says in a few words what is to be decided.
func (c Check) Short() string {
	foods := strings.Join(c.Foods, ", ")
	switch c.Code {
	case CheckNotAssessed:
		return foods + ": not assessed"
	case CheckContradicts, CheckLent:
		return foods + ": " + c.says + " " + wordsOf(c.Leaves) + ", the list of allergens does not"
	}
	return foods + ": " + c.Question + " It could be " + wordsOf(c.Leaves)
}

// name names a check by its leaves.
func (c *Check) name(rules string) {
	var names []string
	for _, code := range c.Leaves {
		for _, class := range classesOf(rules, code) {
			names = addOnce(names, known().classes[rules][class].name)
		}
	}
	c.Leaf, c.Name = c.Leaves[0], strings.Join(names, ", ")
}

func (l *checkList) all() []Check {
	l.name()
	out := []Check{}
	if l.notAssessed != nil {
		out = append(out, *l.notAssessed)
	}
	out = append(out, l.contradicts...)
	return append(out, l.possible...)
}
