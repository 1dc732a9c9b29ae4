package chemistry_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
)

const dosed = `
drink: "To Taste"
serves: 1
components:
  juice:
    ingredients: [500 g core:orange-juice]
    measured: {ph: 3.60, ta: 0.80 g/100 g}
build: [100.00 g juice%s]
`

// The table is what the drink file gives when the dose is poured in, and what it is on
// paper: an equivalent of malic acid is 134.09/2 g, one of citric 192.12/3 g.
func TestDosesAreWhatPouringThemGives(t *testing.T) {
	lib := assaytest.Core(t)
	doses := assaytest.Component(t, assaytest.Assay(t, lib, fmt.Sprintf(dosed, ""), 50), "juice").Chemistry.Doses
	require.Len(t, doses, 12, "four acids, three targets")
	acids := map[string]bool{}
	for i, d := range doses {
		acids[d.Acid] = true
		assert.Greater(t, d.Acidity, 0.80)
		if i%3 > 0 {
			assert.Greater(t, d.Ml, doses[i-1].Ml)
			assert.Less(t, d.PH, doses[i-1].PH)
		}
		if d.Acid != "malic acid" {
			continue
		}
		grams := d.Acidity*(100+d.Ml*1.03)/100 - 0.80 // of citric acid, the stock weighing about 1.03 g/ml
		onPaper := grams * (134.09 / 2) / (192.12 / 3)
		assert.InEpsilon(t, onPaper, d.Ml*1.03*0.10, 0.02)

		poured := fmt.Sprintf(", %.4f g core:malic-acid, %.4f g core:water-pure", 0.10*d.Ml*1.0337, 0.90*d.Ml*1.0337)
		c := assaytest.Assay(t, lib, fmt.Sprintf(dosed, poured), 50).Chemistry
		assert.InEpsilon(t, d.Acidity, c.Acidity[0].Per100g.Mean, 0.003)
		assert.InDelta(t, d.PH, c.PHMeter.Mean, 0.01)
	}
	assert.Len(t, acids, 4)
}

func TestNoDosesForWhatNobodyRead(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\ncomponents: {juice: {ingredients: [100 g core:orange-juice]}}\nbuild: [50 g juice]\n", 50)
	assert.Empty(t, assaytest.Component(t, a, "juice").Chemistry.Doses)
}

// Pure water under one atmosphere of carbon dioxide (1.45 g/l at 25 °C) has pH 3.9, and
// in air 5.6 (general chemistry).
func TestPHOfAGasThatHasLeft(t *testing.T) {
	const text = "drink: x\nserves: 1\nat: 25 °C\nbuild: [100 g core:water-pure]\nfinish:\n  - carbonate: {left: 1.45 g/l ± 0.05 g/l}\n"
	d, faults := drink.Parse("test", []byte(text), nil)
	a, err := assaytest.Run(t.Context(), d, faults, assaytest.Core(t), assaytest.Options{Draws: 100, Seed: 1, Want: assay.Want{Degassed: true}})
	require.NoError(t, err)
	assert.InDelta(t, 3.9, a.Chemistry.PHMeter.Mean, 0.05)
	assert.InDelta(t, 5.6, a.Chemistry.Degassed.Mean, 0.05)
	assert.InDelta(t, 1.45, a.Chemistry.CO2.Mean, 0.02)
}
