package sheet_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/label"
	"sipsum/internal/sheet"
)

// Each word of a file that asks for what nobody can give is a fault at its own place, and
// they come together with the faults that the parser found.
func TestWhatAFileAsksInVainIsRefusedAtItsPlace(t *testing.T) {
	const text = `drink: "In Vain"
serves: 0
may-contain:
  - almond
  - dust
build: [10 g a]
`
	d, faults := drink.Parse("vain.drink.yaml", []byte(text), nil)
	require.Equal(t, 1, faults.Len(), "serves")
	sheet.Check(d, faults)
	err := faults.Err(fail.Wrong)
	require.Error(t, err)
	got := []string{}
	for _, f := range err.(*fail.Error).Faults {
		got = append(got, f.Place.String())
		assert.NotEmpty(t, f.Do)
	}
	assert.Equal(t, []string{"vain.drink.yaml:2:9", "vain.drink.yaml:5:5"}, got)
	assert.ErrorContains(t, err, `5:5: may-contain does not know the allergen "dust"`)
}

// A set of rules with a card is refused nowhere: not by the check, and not by what the
// sheet makes under it.
func TestRulesWithACardAreTaken(t *testing.T) {
	for _, rules := range label.Rules() {
		d, faults := drink.Parse("test", []byte("drink: \"Taken\"\nserves: 1\nrules: ["+rules+"]\nbuild: [10 g a]\n"), nil)
		sheet.Check(d, faults)
		assert.Zero(t, faults.Len(), rules)
	}
	_, faults := drink.Parse("test", []byte("drink: \"Taken\"\nserves: 1\nrules: [moon]\nbuild: [10 g a]\n"), nil)
	for _, rules := range label.Rules() {
		assert.ErrorContains(t, faults.Err(fail.Wrong), rules, "the grammar offers what has a card")
	}
}
