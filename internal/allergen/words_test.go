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
	assert.Equal(t, []string{"almond"}, allergen.LeavesOf("almond"))
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
