package allergen_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/allergen"
)

// A designer may write a leaf or a declared class: Annex II, item 8 names almonds among the
// nuts.
func TestWordsOfAllergens(t *testing.T) {
	assert.True(t, allergen.IsLeaf("almond"))
	assert.False(t, allergen.IsLeaf("nuts"))
	assert.Equal(t, []string{"almond", "tree nut"}, allergen.LeavesOf("almond"), "a nut that is not stated may be one")
	assert.Contains(t, allergen.LeavesOf("nuts"), "almond")
	assert.NotContains(t, allergen.LeavesOf("nuts"), "celery")
	assert.Equal(t, []string{"celery"}, allergen.LeavesOf("celery"))
	assert.Empty(t, allergen.LeavesOf("stones"))
	words := allergen.Words()
	for _, w := range []string{"nuts", "almond", "celery"} {
		n := 0
		for _, have := range words {
			if have == w {
				n++
			}
		}
		assert.Equal(t, 1, n, w)
	}
	assert.NotContains(t, words, "")
	assert.Contains(t, allergen.LeafNames(), "almond, ")
}

// Milk is of any animal, a nut that is not stated any nut, a cereal that is not stated any of
// Annex II, item 1; and what is exact takes in what is not, for it may be that.
func TestAWordTakesInWhatIsMoreExactAndLess(t *testing.T) {
	for word, has := range map[string][]string{
		"milk": {"milk", "cow milk", "goat milk", "buffalo milk"}, "MILK": {"milk", "cow milk"}, "cow milk": {"cow milk", "milk"}, "Cows' milk": {"cow milk", "milk"},
		"tree nut": {"tree nut", "almond", "walnut"}, "tree nuts": {"almond"}, "gluten cereal": {"gluten cereal", "wheat", "spelt", "oats", "barley"},
		"gluten-cereals": {"oats"}, "oats": {"oats", "gluten cereal"}, "wheat": {"wheat", "spelt", "khorasan", "gluten cereal"}, "spelt": {"spelt", "wheat"},
	} {
		assert.Subset(t, allergen.LeavesOf(word), has, word)
	}
	for word, not := range map[string]string{"cow milk": "goat milk", "almond": "walnut", "oats": "wheat", "milk": "soya", "tree nut": "peanut", "celery": "mustard"} {
		assert.NotContains(t, allergen.LeavesOf(word), not, word)
	}
	assert.Empty(t, allergen.LeavesOf(""))
	assert.Empty(t, allergen.LeavesOf(" "))
}
