package data_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What a fact of a coffee does is sourced; roasts lie one after the other; each coffee is a food
// of the core table, once, at every roast of its kind.
func TestFactsOfCoffeesAreSourced(t *testing.T) {
	losses := []float64{}
	for _, r := range rows(t, "coffee_facts.csv") {
		at := r["fact"] + " " + r["value"]
		assert.NotEmpty(t, r["source"], at)
		assert.NotContains(t, r["source"], "from memory", at)
		assert.Contains(t, []string{"row", "position", "kept", "none"}, r["effect"], at)
		if r["effect"] == "position" {
			losses = append(losses, number(t, r, "figure"))
			assert.Positive(t, number(t, r, "sd"), at)
		}
	}
	assert.Len(t, losses, 3)
	assert.IsIncreasing(t, losses)
	core := map[string]bool{}
	for _, r := range rows(t, "core/foods.csv") {
		core[r["code"]] = true
	}
	at := map[[2]string]map[string]bool{}
	for _, r := range rows(t, "coffee_roasts.csv") {
		assert.True(t, core[r["food"]], r["food"])
		key := [2]string{r["form"], r["species"]}
		if at[key] == nil {
			at[key] = map[string]bool{}
		}
		assert.False(t, at[key][r["roast"]], "%v twice", r)
		at[key][r["roast"]] = true
	}
	for key, roasts := range at {
		assert.Len(t, roasts, 3, "%v", key)
	}
}

// What is counted of packs is a share with a source.
func TestWhatIsCountedOfPacksIsSourced(t *testing.T) {
	for _, r := range rows(t, "declared.csv") {
		assert.Greater(t, number(t, r, "share"), 0.0, r["what"])
		assert.Less(t, number(t, r, "share"), 1.0, r["what"])
		assert.NotEmpty(t, r["source"], r["what"])
		assert.NotContains(t, r["source"], "from memory", r["what"])
	}
}
