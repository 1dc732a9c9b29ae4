package allergen_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/allergen"
	"sipsum/internal/food"
)

// What the core table states of its foods and what their names say must agree:
// a contradiction is an error in one of the two.
func TestCoreTableAgreesWithItsNames(t *testing.T) {
	for code, it := range coreItems(t) {
		a := allergen.Assess(it)
		assert.Equal(t, allergen.Usual, a.Knowledge, code)
		assert.Empty(t, a.Missed, "%s: %s, %v states %v", code, it.Name, it.Names, a.Leaves)
		for _, leaf := range a.Leaves {
			assert.True(t, allergen.IsLeaf(leaf), "%s: %s", code, leaf)
		}
		it.Names = nil
		for _, caution := range allergen.Assess(it).Cautions {
			assert.Contains(t, it.Marks, food.Mark{Kind: "caution", Value: caution}, "%s: %s: its name says %s", code, it.Name, caution)
		}
	}
}
