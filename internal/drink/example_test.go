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
		require.Len(t, d.Components[0].Steps, 1, e.Example)
		assert.Equal(t, e.Word, d.Components[0].Steps[0].Kind())
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
