package allergen

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/embedded"
)

// question is what a name leaves open of a food as it is usually sold: of which animal a
// gelatine is, with what a wine was fined. Its leaves may be in the food.
type question struct {
	id string
	condition
	leaves []string // what it could be
	rules  []string // under which it is asked; empty = under all
	asks   string   // "of which animal?"
	why    string
	source string
}

var questions = sync.OnceValue(func() []question {
	var all []question
	for _, row := range embedded.Rows("allergen_questions.csv") {
		all = append(all, question{
			id: row.Text("id"), condition: conditionOf(row), leaves: leavesOf(row, "could_be"), rules: list(row.Text("rules")),
			asks: row.Text("question"), why: row.Text("why"), source: row.Text("source"),
		})
	}
	return all
})

// questionsOf lists the questions that the name of a food leaves open, one of each wording.
// Its further names ask nothing: they may say less than the food is, and in other tongues
// something else ("raisin" is a grape in French).
func questionsOf(it Item) []*question {
	var list []*question
	names := it.names()[:1]
	for i := range questions() {
		q := &questions()[i]
		same := func(other *question) bool { return other.asks == q.asks && slices.Equal(other.leaves, q.leaves) }
		if q.of(it, names) && !slices.ContainsFunc(list, same) {
			list = append(list, q)
		}
	}
	return list
}

// open gives the leaves that the question still leaves open under a set of rules: those
// that are declared there, and not declared already of the same food, nor excepted.
func (q *question) open(rules string, it Item, a Assessment) []string {
	if q.rules != nil && !slices.Contains(q.rules, rules) {
		return nil
	}
	var left []string
	for _, code := range q.leaves {
		if !declared(rules, code) || coveredUnder(rules, code, a.Leaves) || exceptionOf(rules, code, it) != nil {
			continue
		}
		left = append(left, code)
	}
	return left
}

// answer tells a designer how to settle what is open of a food: only the owner of the pack
// can, by an own food that borrows all its figures. Its list is a statement under all rules
// and answers every question, so that all that could be in it stands there.
func answer(it Item, a Assessment) string {
	all := strings.Join(slices.Concat(a.Leaves, a.Likely), ", ")
	if it.Own {
		return "Read the pack and say in " + it.Food.String() + " what it says: allergens: [" + all + "], with what is in it and no more, or [] if none of them is."
	}
	return "Read the pack and write it as a food of your own, which keeps the figures: foods: {my-" + it.Food.Code + ": {name: \"" + it.Name + "\", per: 100 g, fill: \"" +
		it.Food.String() + "\", allergens: [" + all + "]}}, with what is in it and no more; then pour own:my-" + it.Food.Code + "."
}

// wordsOf gives leaves as they are printed.
func wordsOf(codes []string) string {
	words := make([]string, len(codes))
	for i, code := range codes {
		words[i] = known().leaves[code].word
	}
	return strings.Join(words, ", ")
}
