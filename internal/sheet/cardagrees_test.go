package sheet_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/evidence"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// tonic has a little salt of which nobody knows all, and as much protein as a serving may print and
// 100 ml may not.
const tonic = `
drink: "Tonic"
serves: 1
rules: [eu, uk, us, ca, anz]
components:
  syrup:
    ingredients: [6 g core:cinchona-bark, 500 g core:water-brew, 8 g core:orange-peel]
    steps:
      - strain: {collect: 450 g, through: paper}
      - add: [300 g core:sugar-white]
build: [40 g syrup, 120 g core:water-brew, 36 g core:espresso]
`

// What a card has determined in 100 ml it has determined in a serving, and the other way round.
func TestACardAgreesWithItself(t *testing.T) {
	a := assaytest.Asked(t, assaytest.Core(t), tonic, assaytest.Options{Draws: 200, Want: assay.Want{Figures: evidence.Constituents(&drink.Drink{}), Whole: true, Intervals: true}})
	s, err := sheet.Build("sipsum test", a, nil, func(_, id string) (source.Work, bool) { return source.Work{ID: id}, true }, nil)
	require.NoError(t, err)
	open := 0
	for _, c := range s.Cards() {
		for _, r := range c.Rows {
			if r.Per100ml == nil || r.Serving == nil {
				continue
			}
			const none = "not determined"
			assert.Equal(t, r.Per100ml.Printed == none, r.Serving.Printed == none, "%s %s: %s and %s", c.Rules, r.Key, r.Per100ml.Printed, r.Serving.Printed)
			if r.Serving.Printed == none {
				open++
			}
		}
	}
	assert.Positive(t, open)
}
