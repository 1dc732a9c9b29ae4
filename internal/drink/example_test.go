package drink_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// What is shown of a step is one line, and is read as that step where it is pasted.
func TestEveryExampleOfAStepIsRead(t *testing.T) {
	for _, e := range drink.Steps() {
		assert.NotEmpty(t, e.Doc, e.Word)
		require.True(t, strings.HasPrefix(e.Example, "- "+e.Word+": "), "%s: %s", e.Word, e.Example)
		require.NotContains(t, e.Example, "\n")
		d, faults := drink.Parse("t", []byte(head+"components:\n  pot:\n    ingredients:\n      - 500 g core:water\n    steps:\n      "+e.Example+"\nbuild:\n  - 100 g pot\n"), nil)
		require.NoError(t, faults.Err(fail.Wrong), e.Example)
		require.Len(t, d.Components, 1)
		kinds := make(map[string]bool)
		for _, step := range d.Components[0].Steps { // a ferment brings its readings
			kinds[step.Kind()] = true
		}
		assert.True(t, kinds[e.Word], e.Example)
	}
}

// Who does not know the word finds it: the error shows a line of each step.
func TestAnUnknownStepIsAnsweredWithALineOfEach(t *testing.T) {
	_, faults := drink.Parse("t", []byte(head+"build: [1 g a]\nfinish: [{zzz: 1}]\n"), nil)
	said := faults.Err(fail.Wrong).Error()
	for _, e := range drink.Steps() {
		assert.Contains(t, said, "\n"+e.Example)
	}
}

// What was read before and after a ferment are readings beside it, in their order.
func TestAFermentHoldsItsReadings(t *testing.T) {
	d, faults := drink.Parse("t", []byte(head+"components:\n  pot:\n    ingredients: [1 g a]\n    steps:\n      - ferment: {before: {brix: 18, ph: 3.6}, after: {brix: 8, ph: 3.4, abv: 5 %}}\nbuild: [1 g pot]\n"), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	steps := d.Components[0].Steps
	require.Len(t, steps, 3)
	before, ferment, after := steps[0].(*drink.Measured), steps[1].(*drink.Ferment), steps[2].(*drink.Measured)
	assert.Equal(t, "measured", before.Kind())
	assert.Equal(t, 18.0, before.Brix.Number)
	assert.Equal(t, 3.6, before.PH.Number)
	assert.Equal(t, 8.0, ferment.Brix.Number)
	assert.Equal(t, 5.0, ferment.ABV.Number)
	assert.Equal(t, 3.4, after.PH.Number)
	assert.Nil(t, after.Brix, "the step makes it so; it is not read twice")
	assert.Equal(t, []string{"pot"}, before.Of())
	assert.NotEqual(t, before.StepPath(), after.StepPath())
}
