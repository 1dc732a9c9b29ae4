package food

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/phrase"
	"sipsum/internal/source"
)

// boundRule is one row of data/bounds.csv.
type boundRule struct {
	group  string // of data/groups.csv, or "*"
	ids    []constituent.ID
	kind   string // "zero", "below", "rest", "factor", "max" or "allowed"
	amount float64
	of     constituent.ID // factor, rest: of which constituent
	words  phrase.List    // only of foods that are named so; empty: of all
	unless phrase.List    // not of foods that are named so
	source string
}

// subject is what a rule asks of a food: its group, and its names, cut into words.
type subject struct {
	group string
	names [][]string
}

func subjectOf(f *Food) subject {
	s := subject{group: f.Group}
	for _, n := range f.Names {
		s.names = append(s.names, phrase.Words(n.Text))
	}
	return s
}

// called reports whether a name of the food has one of the phrases.
func (s subject) called(l phrase.List) bool { return slices.ContainsFunc(s.names, l.In) }

var boundRules = sync.OnceValue(func() []boundRule {
	var rules []boundRule
	for _, row := range embedded.Rows("bounds.csv") {
		rule := boundRule{
			group: row.Text("group"), kind: row.Text("rule"), of: constituent.ID(row.Text("of")),
			words: phrase.Read(row.Text("words")), unless: phrase.Read(row.Text("unless")), source: row.Text("source"),
		}
		for id := range strings.FieldsSeq(row.Text("constituents")) {
			rule.ids = append(rule.ids, constituent.Must(constituent.ID(id)).ID)
		}
		rule.amount, _ = row.Optional("amount")
		rules = append(rules, rule)
	}
	return rules
})

type boundKey struct{ kind, group string }

// boundRulesOf are the rules by kind and group, in the order of the file. A
// rule from memory never applies.
var boundRulesOf = sync.OnceValue(func() map[boundKey][]boundRule {
	rules := map[boundKey][]boundRule{}
	for _, rule := range boundRules() {
		if !source.IsFromMemory(rule.source) {
			key := boundKey{rule.kind, rule.group}
			rules[key] = append(rules[key], rule)
		}
	}
	return rules
})

// ruleFor finds the first rule of a kind for a constituent of the food, by its group, else
// for all groups; a rule for a parent covers its parts. Of a food without a group nothing
// is known.
func (s subject) ruleFor(kind string, c *constituent.Constituent) (boundRule, bool) {
	if s.group == "" {
		return boundRule{}, false
	}
	for _, group := range []string{s.group, "*"} {
		for _, rule := range boundRulesOf()[boundKey{kind, group}] {
			of := slices.ContainsFunc(rule.ids, func(id constituent.ID) bool { return id == c.ID || (kind == "zero" && below(c, id)) })
			if of && (len(rule.words) == 0 || s.called(rule.words)) && !s.called(rule.unless) {
				return rule, true
			}
		}
	}
	return boundRule{}, false
}

// LessInItsKind gives the most, in the constituent's own unit, that a published work found of
// it in foods that are named like this one, and the work; None where no rule of data/bounds.csv
// (below) says so. It is no figure of the food itself.
func LessInItsKind(f *Food, c *constituent.Constituent) (most float64, source string) {
	return subjectOf(f).lessInItsKind(c)
}

func (s subject) lessInItsKind(c *constituent.Constituent) (most float64, source string) {
	rule, ok := s.ruleFor("below", c)
	if !ok {
		return None, ""
	}
	return rule.amount, rule.source
}

// MostIn gives the highest figure, in the constituent's own unit, that a published work found in the
// group of a food, and the work; None where data/bounds.csv (max) has none.
func MostIn(f *Food, c *constituent.Constituent) (most float64, source string) {
	rule, ok := subjectOf(f).ruleFor("max", c)
	if !ok {
		return None, ""
	}
	return rule.amount, rule.source
}
