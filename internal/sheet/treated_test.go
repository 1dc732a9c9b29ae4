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
	assert.Len(t, open("fat-washed with peanut butter", "Wet", ""), 1)
	assert.Empty(t, open("fat-washed with peanut butter", "Peanut wet", "peanut"))
}
