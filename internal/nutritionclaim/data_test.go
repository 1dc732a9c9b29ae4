package nutritionclaim_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/nutritionclaim"
	"sipsum/internal/unit"
)

var codes = []string{"eu", "uk", "us", "ca", "anz", "codex"}

// Every row has its legal source and a status; of eu and us none is unverified.
func TestEveryRowHasASourceAndAStatus(t *testing.T) {
	for _, file := range []string{"nutrition_claims.csv", "claim_references.csv", "reference_amounts.csv", "claim_texts.csv", "claim_foods.csv", "claim_limits.csv"} {
		for _, row := range table(t, file) {
			assert.NotEmpty(t, row["source"], "%s: %v", file, row)
			assert.NotContains(t, row["source"], "from memory", "%s: %v", file, row)
			for rules := range strings.FieldsSeq(row["rules"]) {
				assert.Contains(t, codes, rules, "%s: %v", file, row)
			}
			if status, has := row["status"]; has {
				assert.Contains(t, []string{"verified", "secondary"}, status, "%s: %v", file, row)
			}
		}
	}
}

// A row says one thing that the package can read.
func TestRowsAreWellFormed(t *testing.T) {
	conditions, words := map[string]bool{}, []string{"at most", "below", "at least", "none", "named"}
	for _, row := range table(t, "claim_foods.csv") {
		conditions[row["condition"]] = true
		assert.Contains(t, []string{"group", "words", "reduced", "no group", "every group"}, row["by"])
		assert.Contains(t, []string{"yes", "ask", "named"}, row["answer"])
	}
	names := map[string]bool{}
	for _, row := range table(t, "nutrition_claims.csv") {
		names[row["claim"]] = true
	}
	used := map[string]bool{}
	for _, row := range table(t, "nutrition_claims.csv") {
		at := row["rules"] + " " + row["claim"]
		assert.Contains(t, words, row["is"], at)
		assert.Contains(t, []string{"the drink", "ingredients", "energy", "100 ml", "100 g", "100 kcal", "RACC", "RACC and serving"}, row["basis"], at)
		assert.NotEmpty(t, row["word"], at)
		if row["stronger"] != "" {
			assert.True(t, names[row["stronger"]], "%s: no claim %q", at, row["stronger"])
		}
		if what, ok := strings.CutPrefix(row["disclose"], "unless "); ok {
			assert.True(t, names[what], "%s: no claim %q", at, what)
		}
		if row["basis"] == "ingredients" {
			assert.True(t, conditions[row["of"]], "%s: claim_foods.csv has no %q", at, row["of"])
			used[row["of"]] = true
			continue
		}
		if _, mass := unit.PerGram(row["unit"]); !mass {
			assert.Contains(t, []string{"kJ", "kcal", "%", "% vol"}, row["unit"], at)
		}
	}
	for condition := range conditions {
		assert.True(t, used[condition], "no claim asks for %q", condition)
	}
	for _, row := range table(t, "claim_references.csv") {
		c := constituent.Must(constituent.ID(row["of"]))
		_, mass := unit.PerGram(row["unit"])
		assert.True(t, mass && c.PerGram > 0, row["of"])
	}
}

// What the rules have to say of claims, above a strength or always. 1.15 % vol: Standard 1.2.7
// as amended 2025.
func TestTexts(t *testing.T) {
	for _, rules := range codes {
		assert.NotEmpty(t, nutritionclaim.Texts(rules, 0), "%s: a card says where its claims end", rules)
	}
	assert.Len(t, nutritionclaim.Texts("anz", 1.15), 1)
	assert.Len(t, nutritionclaim.Texts("anz", 1.16), 2)
	assert.Len(t, nutritionclaim.Texts("us", 0), 1)
	assert.Len(t, nutritionclaim.Texts("us", 4), 2)
	assert.Len(t, nutritionclaim.Texts("us", math.NaN()), 2, "an unknown strength")
}

// Trans fat is a part of fat, though the vocabulary carries it beside; sodium is a part of nothing.
func TestWhole(t *testing.T) {
	assert.Equal(t, constituent.Fat, nutritionclaim.Whole("FATRN"))
	assert.Empty(t, nutritionclaim.Whole("NA"))
}
