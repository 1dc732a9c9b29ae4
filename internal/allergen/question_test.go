package allergen_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/allergen"
)

func TestQuestionsAreWellFormed(t *testing.T) {
	bar := func(r rune) bool { return r == '|' }
	seen := map[string]bool{}
	for _, row := range rows(t, "mark_rules.csv") {
		seen[row["id"]] = true // an evidence names the row by its id alone
	}
	for _, row := range rows(t, "allergen_questions.csv") {
		id := row["id"]
		assert.False(t, seen[id], "%s stands twice", id)
		seen[id] = true
		assert.True(t, strings.HasSuffix(row["question"], "?"), id)
		assert.NotEmpty(t, row["why"], id)
		assert.NotEmpty(t, row["source"], id)
		assert.NotContains(t, row["source"], "from memory", "%s is printed", id)
		assert.NotEmpty(t, row["name_words"]+row["group"], "%s would be asked of every food", id)
		assert.NotEmpty(t, row["could_be"], id)
		for leaf := range strings.FieldsFuncSeq(row["could_be"], bar) {
			assert.True(t, allergen.IsLeaf(leaf), "%s: %s", id, leaf)
		}
		for rules := range strings.FieldsFuncSeq(row["rules"], bar) {
			assert.True(t, slices.Contains(allergen.Rules(), rules), "%s: %s", id, rules)
		}
	}
	for _, row := range rows(t, "allergen_knowledge.csv") {
		assert.Equal(t, allergen.Knowledge(row["knowledge"]), allergen.MarksAre(row["table"]))
		assert.NotEmpty(t, row["source"])
	}
	assert.Equal(t, allergen.Stated, allergen.MarksAre("a table whose publisher lists allergens"))
}

// Every set of rules that declares allergens has a row for the list of ingredients.
func TestEveryRulesHaveAListOfIngredients(t *testing.T) {
	has := map[string]bool{}
	for _, row := range rows(t, "ingredient_rules.csv") {
		has[row["rules"]] = true
		assert.NotEmpty(t, row["heading"])
		assert.NotEmpty(t, row["source"])
		assert.Contains(t, []string{"verified", "secondary", "unverified"}, row["status"])
	}
	for _, rules := range allergen.Rules() {
		assert.True(t, has[rules], rules)
	}
}
