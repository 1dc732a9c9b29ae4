package recipe_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/recipe"
)

// find finds the foods of the text of a drink file that is well written.
func find(t testing.TB, foods recipe.Foods, text string) (*recipe.Recipe, error) {
	t.Helper()
	d, faults := drink.Parse("test", []byte(text), nil)
	require.Zero(t, faults.Len(), text)
	return recipe.Find(context.Background(), d, faults, foods)
}

// What a pantry holds and the drink does not use is looked up, so that its faults
// are told, but no draws are made of it: a pantry may hold a thousand lines.
func TestWhatADrinkDoesNotUseIsNotDrawn(t *testing.T) {
	const text = "drink: \"x\"\nserves: 1\ncomponents:\n  shot: {ingredients: [10 g %s]}\nbuild: [10 g core:sugar-white]\n"
	r, err := find(t, assaytest.Core(t), strings.Replace(text, "%s", "core:espresso", 1))
	require.NoError(t, err)
	var drawn []string
	for _, p := range r.Profiles {
		drawn = append(drawn, p.Food.ID.String())
	}
	assert.Equal(t, []string{"core:sugar-white", r.Water.Food.ID.String()}, drawn)
	assert.Len(t, r.Items, 1)
	_, err = find(t, assaytest.Core(t), strings.Replace(text, "%s", "core:no-such-food", 1))
	assert.ErrorContains(t, err, "no food core:no-such-food")
}
