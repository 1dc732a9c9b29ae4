package allergen_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/allergen"
)

// Annex II of Regulation (EU) No 1169/2011 has fourteen items, in this order.
func TestClassesStandInTheOrderOfTheRules(t *testing.T) {
	var codes []string
	for _, c := range allergen.Classes("eu") {
		assert.NotEmpty(t, c.Name)
		codes = append(codes, c.Code)
	}
	require.Len(t, codes, 14)
	assert.Equal(t, []string{"gluten-cereals", "crustaceans", "eggs", "fish", "peanuts", "soybeans", "milk"}, codes[:7])
	assert.Empty(t, allergen.Classes("moon"))
}

func TestAClassIsNeverNotFoundWhileAnybodyHasToLook(t *testing.T) {
	d := allergen.Declaration{
		Rules:      "eu",
		Contains:   []allergen.Entry{{Code: "milk"}},
		MayContain: []allergen.Entry{{Code: "nuts"}, {Code: "sulphites"}},
		Check:      []allergen.Check{{Code: allergen.CheckPossible, Leaf: "sulphites", Leaves: []string{"sulphites"}}},
	}
	assert.Equal(t, allergen.StateContains, d.State("milk"))
	assert.Equal(t, allergen.StateMayContain, d.State("nuts"))
	assert.Equal(t, allergen.StateCheck, d.State("sulphites"), "it may be in the wine itself")
	assert.Equal(t, allergen.StateNoneFound, d.State("eggs"))

	d.Check = append(d.Check, allergen.Check{Code: allergen.CheckNotAssessed, Foods: []string{"own:bitters"}})
	assert.Equal(t, allergen.StateCheck, d.State("eggs"), "nobody knows what the bitters hold")
	assert.Equal(t, allergen.StateMayContain, d.State("nuts"))
	assert.Equal(t, allergen.StateContains, d.State("milk"))
}
