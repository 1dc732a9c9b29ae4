package recipe_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
)

// twins has a component with the name of a food, which both stand in the build, and two
// own foods of one name.
const twins = `drink: "Twins"
serves: 1
foods:
  oat-a: {name: "House oat", per: 100 g, values: {SUGAR: 10 g}, source: "invented"}
  oat-b: {name: "house  oat", per: 100 g, values: {SUGAR: 20 g}, source: "invented"}
components:
  Lemon juice, fresh:
    ingredients: [30 g core:lemon-juice, 20 g core:sugar-white]
build: ["50 g Lemon juice, fresh", 40 g core:lemon-juice, 30 g own:oat-a, 20 g own:oat-b, "10 g Lemon juice, fresh"]
`

func ofFood(table, code string) recipe.PartID {
	return recipe.PartID{Food: food.ID{Table: table, Code: code}}
}

func TestWhatReadsAlikeIsCalledWithItsCode(t *testing.T) {
	called := assaytest.Found(t, assaytest.Core(t), twins).Called
	assert.Equal(t, recipe.Names{
		ofFood("core", "water-pure"):      "Water, pure",
		{Component: "Lemon juice, fresh"}: "Lemon juice, fresh",
		ofFood("core", "lemon-juice"):     "Lemon juice, fresh (core:lemon-juice)",
		ofFood("core", "sugar-white"):     "Sugar, white",
		ofFood("own", "oat-a"):            "House oat (own:oat-a)",
		ofFood("own", "oat-b"):            "house  oat (own:oat-b)",
	}, called)
}

// A name made to look like another's name and code is told apart too.
func TestNoTwoPartsReadAlike(t *testing.T) {
	const text = `drink: "Masks"
serves: 1
foods:
  a: {name: "Oat (own:b)", per: 100 g, values: {SUGAR: 10 g}, source: "invented"}
  b: {name: "Oat", per: 100 g, values: {SUGAR: 20 g}, source: "invented"}
components:
  oat: {ingredients: [10 g core:sugar-white]}
build: [10 g oat, 10 g own:a, 10 g own:b]
`
	called := assaytest.Found(t, assaytest.Core(t), text).Called
	seen := map[string]bool{}
	for _, name := range called {
		assert.False(t, seen[name], name)
		seen[name] = true
	}
	assert.Len(t, seen, 5, "a component, two own foods, sugar, and the water of ice")
	assert.Equal(t, "Oat (own:b) (own:a)", called[ofFood("own", "a")])
	assert.Equal(t, "Oat (own:b)", called[ofFood("own", "b")])
}

func TestABareNameOfTwoOwnFoodsIsRefused(t *testing.T) {
	const text = `drink: "Which"
serves: 1
foods:
  a: {name: "Oat", per: 100 g, values: {SUGAR: 10 g}, source: "invented"}
  b: {name: "Oat", per: 100 g, values: {SUGAR: 20 g}, source: "invented"}
build: [10 g Oat]
`
	assert.Contains(t, assaytest.Refused(t, assaytest.Core(t), text), `test:6:14: "Oat" is the name of more than one own food (write the one you mean: own:a or own:b)`)
}
