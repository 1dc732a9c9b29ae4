package sheet_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/sheet"
)

// A log asks for what codes ask for: seven days at 5 °C and cooling by the clock, unless a
// meter has read a pH that frees the component (FDA Food Code 3-501.14, .16, .17), and it
// keeps a stricter word of the designer's own.
func TestALogAsksForControlUnlessAMeterLiftsIt(t *testing.T) {
	const text = `
drink: "Logged"
serves: 1
rules: [us]
components:
  sour:
    ingredients: [100 g own:wet]
    measured: {ph: 2.3}
    keeps: 14 days at 8 °C
  mild:
    ingredients: [100 g own:wet]
    steps: [reduce: {by: 10 %}]
    keeps: 14 days at 8 °C
  short:
    ingredients: [100 g own:wet]
    keeps: 36 h
  spare:
    ingredients: [100 g own:wet]
foods:
  wet: {name: "Wet", per: 100 g, values: {WATER: 90 g, SUCS: 9 g, CITAC: 1 g}, source: "invented", allergens: []}
build: [10 g sour, 10 g mild, 10 g short]
`
	s, err := sheet.Build("test", calculated(t, text, assaytest.Options{}), nil, uncited, nil)
	require.NoError(t, err)
	l := s.Log()
	require.Len(t, l.Batches, 3, "a spare one is not in the drink")
	assert.Equal(t, sheet.Batch{Name: "sour", Grams: 100, Days: 14, Cold: 8, Control: false}, l.Batches[0])
	mild := l.Batches[1]
	assert.InDelta(t, 90, mild.Grams, 1e-6)
	mild.Grams = 90
	assert.Equal(t, sheet.Batch{Name: "mild", Grams: 90, Days: 7, Cold: 5, Control: true, Cooled: true}, mild)
	assert.Equal(t, sheet.Batch{Name: "short", Grams: 100, Days: 2, Cold: 5, Control: true}, l.Batches[2])
	assert.Empty(t, l.Hot, "nobody says that it is served hot")
	hot, err := sheet.Build("test", calculated(t, strings.Replace(text, "rules:", "at: 60 °C\nrules:", 1), assaytest.Options{}), nil, uncited, nil)
	require.NoError(t, err)
	assert.Equal(t, []sheet.HotHolding{{Rules: "us", Celsius: 57}}, hot.Log().Hot)
	assert.Equal(t, []float64{57, 21, 2, 5, 6}, []float64{l.From, l.First, l.Within, l.Cold, l.InAll})
}
