package assay_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

func asked(t testing.TB, lib assaytest.Library, text string, o assaytest.Options) *assay.Assay {
	t.Helper()
	return assaytest.Asked(t, lib, text, o)
}

// plain is a drink of which only the hand is uncertain.
const plain = `
drink: "Plain"
serves: 1
foods:
  wet: {name: "Water of the test", per: 100 g, values: {WATER: 100 g}, source: "invented"}
build: [200 g ± 4 g sd own:wet]
`

func TestARunThatNobodyAsksAnswersNothing(t *testing.T) {
	a := asked(t, assaytest.Library{}, plain, assaytest.Options{Draws: 50})
	assert.Nil(t, a.Drivers)
	assert.Empty(t, a.Suggestions)
	a = asked(t, assaytest.Library{}, plain, assaytest.Options{Draws: 50, Want: assay.Want{Why: "WATER"}})
	assert.NotNil(t, a.Drivers)
	assert.Empty(t, a.Suggestions, "nobody has asked what to read next")
	a = asked(t, assaytest.Library{}, plain, assaytest.Options{Draws: 50, Want: assay.Want{Next: true, Figures: []constituent.ID{"WATER"}}})
	assert.Nil(t, a.Drivers, "nor what a figure hangs on")
	assert.NotEmpty(t, a.Suggestions)
}
