package reading_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

// mulled is wine with sugar, cooked as step says and then read.
func mulled(t *testing.T, lib assaytest.Library, step, read string) *assay.Assay {
	t.Helper()
	return assaytest.Assay(t, lib, fmt.Sprintf("drink: Mulled\nserves: 1\ncomponents:\n  hot:\n    ingredients: [500 g core:wine-red, 60 g core:sugar-white]\n    steps: [%s, measured: {abv: %s}]\nbuild: [100 g hot]\n", step, read), 300)
}

// A strength that was read is the strength, also where the vapour leaves next to nothing: an
// instrument sees what is there, and no vessel has been calculated. 560 g of this wine hold 53 g of
// alcohol (SR28 14096: 10.6 in 100 g of wine), and no reading brings more of it back.
func TestAStrengthReadOfABoiledWineCounts(t *testing.T) {
	lib := assaytest.Core(t)
	was := 0.0
	for _, read := range []float64{0.6, 1, 2, 4, 6, 10, 14} {
		a := mulled(t, lib, "reduce: {to: 300 g}", fmt.Sprintf("%g %%", read))
		require.Len(t, a.Readings, 1)
		r := a.Readings[0]
		assert.InDelta(t, read, r.Used, 0.3, "within the half per cent of a bar's alcoholometer")
		assert.Equal(t, read <= 1, r.Agrees, "read %g, expected %g", read, r.Expected)
		assert.Greater(t, r.Used, was, "it grows with the reading")
		was = r.Used
		assert.InDelta(t, 100, a.Mass.Mean, 0.5, "the pot was weighed")
		alcohol := assaytest.Figure(t, a.PerServing, constituent.Alcohol)
		assert.InDelta(t, r.Used/100*0.78924*a.Volume.Mean, alcohol.Mean, 0.02, "OIML R 22: 0.78924 g/ml")
	}
	most := mulled(t, lib, "reduce: {to: 300 g}", "40 %")
	assert.False(t, most.Readings[0].Agrees)
	assert.LessOrEqual(t, assaytest.Figure(t, most.PerServing, constituent.Alcohol).Mean, 56.0/3, "what was poured, within its own range")
}

// Alcohol leaves a hot pot: a strength below that of the wine is alcohol gone, and no water come.
func TestAStrengthReadOfAHotWineIsNoWater(t *testing.T) {
	lib := assaytest.Core(t)
	a := mulled(t, lib, "heat: {at: 95 °C, for: 20 min}", "5 %")
	assert.InDelta(t, 5, a.Readings[0].Used, 0.2)
	assert.Contains(t, a.Readings[0].Advice, "gone in the heat")
	cold := mulled(t, lib, "add: [1 g core:water-pure]", "12.4 %")
	sugars := assaytest.Figure(t, cold.PerServing, constituent.Sugar).Mean
	assert.InEpsilon(t, sugars*560/535, assaytest.Figure(t, a.PerServing, constituent.Sugar).Mean, 0.03, "as much sugar in what is left")
}
