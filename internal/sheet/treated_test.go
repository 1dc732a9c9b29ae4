package sheet_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Words of a technique pour nothing and may leave something: an allergen among them is asked,
// unless a food of the drink brings it.
func TestATechniqueThatNamesAnAllergenIsAsked(t *testing.T) {
	const text = `
drink: "Wash"
serves: 1
rules: [eu]
components:
  juice:
    ingredients: [100 g own:wet]
    steps: [treat: "%s"]
foods:
  wet: {name: "%s", per: 100 g, values: {WATER: 90 g, SUCS: 10 g}, source: "invented", allergens: [%s]}
build: [100 g juice]
`
	open := func(technique, name, allergens string) []string {
		return built(t, fmt.Sprintf(text, technique, name, allergens)).Undecided()
	}
	assert.Empty(t, open("smoked, apple wood", "Wet", ""))
	for _, tool := range []string{"N2, 3 bar, stout tap", "cooled with a milk-glass cube", "beaten, egg whisk", "stirred, walnut spoon"} {
		assert.Empty(t, open(tool, "Wet", ""), tool)
	}
	assert.Len(t, open("smoked, almond wood", "Wet", ""), 1)
	assert.Len(t, open("aged in a stout cask", "Wet", ""), 1)
	assert.Len(t, open("fat-washed with peanut butter", "Wet", ""), 1)
	assert.Empty(t, open("fat-washed with peanut butter", "Peanut wet", "peanut"))
}

// What is handed out tells the way of each food apart, what is asked, and how grave a caution is.
func TestAHandedOutPageSaysWhatTheTextSays(t *testing.T) {
	const text = `
drink: "Two Ways"
serves: 1
rules: [eu]
components:
  base:
    ingredients: [50 g own:one]
    steps: [treat: "flamed"]
  foam:
    ingredients: [20 g own:two]
foods:
  one: {name: "One", per: 100 g, values: {WATER: 90 g}, source: "invented", allergens: [cow milk]}
  two: {name: "Two gelatine", per: 100 g, values: {WATER: 90 g}, source: "invented", allergens: [cow milk]}
build: [40 g base, 10 g foam]
`
	var all string
	for _, b := range built(t, text).AllergensLeaf().Blocks {
		for _, l := range b.Lines {
			all += l.Sentence() + "\n"
		}
	}
	assert.Contains(t, all, "from One (stated), by way of base; from Two gelatine (stated), by way of foam")
	assert.Contains(t, all, "May kill: ")
	assert.Contains(t, all, "Follow your local code")
}
