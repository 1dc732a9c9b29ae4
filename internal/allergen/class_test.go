package allergen_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/allergen"
)

// Annex II has 14 items, FD&C Act 201(qq) nine foods beside the sulphites of 21 CFR.
func TestClassesOfTheRules(t *testing.T) {
	eu := allergen.Classes("eu")
	require.Len(t, eu, 14)
	assert.Equal(t, "gluten-cereals", eu[0].Code)
	assert.Equal(t, "Molluscs", eu[13].Name)
	assert.Len(t, allergen.Classes("us"), 10)
	assert.Empty(t, allergen.Classes("mars"))
	for i, c := range allergen.Classes("uk") {
		assert.Equal(t, eu[i].Code, c.Code)
	}
	for _, c := range allergen.Classes("codex") {
		assert.Equal(t, allergen.Unverified, c.Status, "its revision is open")
	}
}

func TestStateOfAClass(t *testing.T) {
	d, err := allergen.Declare("eu", []allergen.Item{stated("m", "Milk", "cow milk"), coreItems(t)["gelatin"]}, []string{"almond", "milk"})
	require.NoError(t, err)
	assert.Equal(t, allergen.StateContains, d.State("milk"))
	assert.Equal(t, allergen.StateMayContain, d.State("nuts"))
	assert.Equal(t, allergen.StateCheck, d.State("fish"), "of which animal?")
	assert.Equal(t, allergen.StateNoneFound, d.State("celery"))
	d = declare(t, "eu", ownItem("House syrup"))
	assert.Equal(t, allergen.StateCheck, d.State("celery"), "nobody has looked")
	require.Len(t, allergen.States(), 4)
	assert.Contains(t, allergen.States()[3].Means, "not a promise")
}

// In Australia and New Zealand wheat is said twice in the summary, barley and oats as gluten; nuts
// stand by the names that Schedule 9 requires.
func TestPlainEnglishNames(t *testing.T) {
	d := declare(t, "anz", stated("w", "w", "wheat", "oats", "almond", "soya", "crustacean"))
	assert.Equal(t, []string{"Wheat", "Gluten", "Crustacean", "Soy", "Almond"}, names(d.Contains))
	d = declare(t, "ca", stated("w", "w", "barley", "triticale", "pine nut", "mustard", "lupin"))
	assert.Equal(t, []string{"Pine nuts", "Triticale", "Mustard", "Barley"}, names(d.Contains))
	assert.Equal(t, []string{"lupin"}, names(d.NotDeclared))
}
