package recipe_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
)

// named is a library that has a food of any of some names.
type named struct {
	hints
	id food.ID
}

func (n named) Named(context.Context, string) (food.ID, bool, error) { return n.id, true, nil }

// The drink's own names come before those of tables: alone where one looks the same, and even where
// a table has a food of the very name that was written.
func TestOwnNamesAreSuggestedFirst(t *testing.T) {
	const own = "drink: x\nserves: 1\nfoods:\n  house-oat: {name: \"Oat drink\", per: 100 g, values: {SUGAR: 10 g}, source: \"invented\"}\ncomponents:\n  cherry syrup: {ingredients: [1 g own:house-oat]}\nbuild: [1 g cherry syrup, 1 g %s]\n"
	lib := hints{Library: shelf(), near: []string{"t:lemon"}}
	for line, says := range map[string]string{
		"Cherry Syrup":    `is called "Cherry Syrup" (did you mean your cherry syrup?)`,
		"chery syrup":     `is called "chery syrup" (did you mean your cherry syrup?)`,
		"syrup":           `is called "syrup" (did you mean your cherry syrup or t:lemon?)`,
		"OAT DRINK":       `is called "OAT DRINK" (did you mean your own:house-oat?)`,
		"house oat":       `is called "house oat" (did you mean your own:house-oat?)`,
		"own:oat":         `no own food "oat" under foods: (did you mean your own:house-oat or t:lemon?)`,
		"gin":             `is called "gin" (did you mean t:lemon?)`,
		"of the t:lemon":  `is called "the t:lemon" (write the amount and then the food alone: t:lemon)`,
		"of the t:lemonn": `is called "the t:lemonn" (did you mean t:lemon?)`,
	} {
		d, faults := drink.Parse("f", []byte(replaced(own, line)), nil)
		_, err := recipe.Find(context.Background(), d, faults, lib)
		assert.ErrorContains(t, err, says, line)
	}
	whole := named{lib, food.ID{Table: "t", Code: "lemon"}}
	_, err := find(t, whole, replaced(own, "chery syrup"))
	assert.ErrorContains(t, err, `"chery syrup" is not one of this drink's names, and looks like one (did you mean your cherry syrup or t:lemon?)`)
	r, err := find(t, whole, replaced(own, "syrup"))
	require.NoError(t, err, "a word of an own name is another name")
	assert.Equal(t, "t:lemon", r.Lines["build/syrup"].Profile.Food.ID.String())
	r, err = find(t, lib, replaced(own, "Own:House-Oat"))
	require.NoError(t, err, "a code in any case")
	assert.Equal(t, "own:house-oat", r.Lines["build/own:House-Oat"].Profile.Food.ID.String())
}

// A density that is missing brings no second error, and hides none of the figures beside it.
func TestAMissingDensityIsOneFault(t *testing.T) {
	_, err := find(t, shelf(), "drink: x\nserves: 1\nfoods:\n  a: {name: \"Oat\", per: 100 ml, values: {SUGER: 10 g, sugars: 130 g}, source: \"invented\"}\nbuild: [10 ml own:a]\n")
	require.Error(t, err)
	assert.Contains(t, err.Error(), "states its values per volume, but no density")
	assert.Contains(t, err.Error(), `unknown constituent "SUGER"`)
	assert.NotContains(t, err.Error(), "has no density")
	assert.NotContains(t, err.Error(), "no food with more", "130 g in 100 ml may be a syrup")
	_, err = find(t, shelf(), "drink: x\nserves: 1\nfoods:\n  a: {name: \"Oat\", per: 100 g, values: {sugars: 10 g}, source: \"invented\"}\nbuild: [10 ml own:a]\n")
	assert.ErrorContains(t, err, "ml is a volume, but own:a has no density (add density: 1.03 g/ml to it under foods:, or write grams)")
}

// A word of a pack means what its rules say, by whatever words: carbs of the us are with their fibre,
// and a figure that two words state is stated twice.
func TestAWordMeansWhatThePackSays(t *testing.T) {
	of := func(entry string) *food.Food {
		r, err := find(t, shelf(), "drink: x\nserves: 1\nfoods:\n  a: {name: \"A\", "+entry+", source: \"invented\"}\nbuild: [10 g own:a]\n")
		require.NoError(t, err, entry)
		return r.Lines["build/own:a"].Profile.Food
	}
	for entry, id := range map[string]string{
		"per: 100 g, declared: eu, values: {Carbs: 5 g}": "CHOAVL", "per: 100 g, declared: us, values: {carbs: 5 g}": "CHOCDF", "per: 100 g, values: {ENERC: 47 kcal}": "ENERC_KCAL",
		"per: 100 g, values: {Salt: 5 g}": "NA", "per: 100 g, values: {NA: 2 g}": "NA", "per: 100 g, values: {Malic Acid: 100 mg}": "MALAC", "per: 100 g, values: {of which sugars: 1 g}": "SUGAR", "per: 100 g, values: {vitamin e: 1 mg}": "TOCPHA",
	} {
		assert.Equal(t, id, string(of(entry).Values[0].Constituent), entry)
	}
	assert.InDelta(t, 2000, of("per: 100 g, values: {Salt: 5 g}").Values[0].Amount, 1e-9, "salt is sodium × 2.5")
}

func replaced(text, line string) string { return strings.Replace(text, "%s", line, 1) }
