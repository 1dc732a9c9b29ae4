package recipe_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/embedded"
)

// A plain word of the kitchen is answered with what to write, before foods that only sound alike; a
// component of such a name still comes first.
func TestPlainWordsAreAnsweredPlainly(t *testing.T) {
	lib := hints{Library: shelf(), near: []string{"t:lemon"}}
	for line, says := range map[string]string{
		"ice":         "- chill: {melt: … g}",
		"Hot Water":   "core:water-tap",
		"sugar":       "(write core:sugar-white)",
		"house syrup": "under components: house syrup:",
		"gin":         "did you mean t:lemon?",
	} {
		_, err := find(t, lib, "drink: x\nserves: 1\nbuild: [1 g "+line+"]\n")
		assert.ErrorContains(t, err, says, line)
	}
	_, err := find(t, lib, "drink: x\nserves: 1\ncomponents: {raw sugar: {ingredients: [1 g t:lemon]}}\nbuild: [1 g raw sugar, 1 g sugar]\n")
	assert.ErrorContains(t, err, "did you mean your raw sugar? Else write core:sugar-white")
	for _, row := range embedded.Rows("plain_foods.csv") {
		assert.NotEmpty(t, row.Text("write"))
		assert.NotEmpty(t, row.Text("source"))
	}
}
