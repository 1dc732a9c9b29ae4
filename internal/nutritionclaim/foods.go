package nutritionclaim

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/phrase"
)

// What a condition of ingredients asks of the foods that it finds.
const (
	asNone  = "none"  // there is none of them
	asNamed = "named" // they are marked
)

// What a food that was found means.
const (
	standsAgainst = "yes"
	makerJudges   = "ask"
)

// found is a row of data/claim_foods.csv: which foods a condition is about.
type found struct {
	condition string
	by        string
	groups    []string
	words     phrase.List
	not       phrase.List
	holding   constituent.ID // a food that is known to have none of it is not meant
	answer    string
	source    string
}

var foodRows = sync.OnceValue(func() []found {
	var all []found
	for _, r := range embedded.Rows("claim_foods.csv") {
		f := found{
			condition: r.Text("condition"), by: r.Text("by"), not: phrase.Read(r.Text("not_words")),
			holding: constituent.ID(r.Text("holding")), answer: r.Text("answer"), source: r.Text("source"),
		}
		if f.by == "words" {
			f.words = phrase.Read(r.Text("key"))
		} else {
			f.groups = strings.Split(r.Text("key"), "|")
		}
		all = append(all, f)
	}
	return all
})

// names reports whether a row is about a food.
func (f *found) names(of Food) bool {
	if f.holding != "" && slices.Contains(of.Lacks, f.holding) {
		return false
	}
	words := phrase.Words(of.Name)
	spared := f.not.In(words)
	switch f.by {
	case "words":
		return f.words.In(f.not.Without(words))
	case "reduced":
		return of.Reduced && slices.Contains(f.groups, of.Group)
	case "no group":
		return of.Group == "" && !spared
	}
	return slices.Contains(f.groups, of.Group) && !spared
}

// allOf reports whether every food is of the row's groups.
func (f *found) allOf(foods []Food) bool {
	return !slices.ContainsFunc(foods, func(o Food) bool { return !slices.Contains(f.groups, o.Group) })
}

// search gives the foods that stand against a condition, and those of which the maker
// judges; a food that does the first is not in the second.
func search(condition string, foods []Food) (against, asked []string) {
	for _, of := range foods {
		answer := ""
		for i := range foodRows() {
			f := &foodRows()[i]
			if f.condition != condition || answer != "" && answer != makerJudges {
				continue
			}
			if f.by == "every group" && f.allOf(foods) || f.by != "every group" && f.names(of) {
				answer = f.answer
			}
		}
		switch answer {
		case "":
		case makerJudges:
			asked = merged(asked, []string{of.Name})
		default:
			against = merged(against, []string{of.Name})
		}
	}
	return against, asked
}
