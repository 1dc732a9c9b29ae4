package chemistry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
)

// brewing is a litre of a water with mmol of calcium, magnesium and bicarbonate, and chloride
// for what metals are left.
func brewing(calcium, magnesium, bicarbonate, citric float64) (*chemistry.Chemistry, float64) {
	return waterOf(calcium, magnesium, bicarbonate, citric, 0)
}

// carbonated is the same with mmol of carbon dioxide, which no metal holds.
func carbonated(calcium, magnesium, bicarbonate, gas float64) (*chemistry.Chemistry, float64) {
	return waterOf(calcium, magnesium, bicarbonate, 0, gas)
}

func waterOf(calcium, magnesium, bicarbonate, citric, gas float64) (*chemistry.Chemistry, float64) {
	gram := func(id constituent.ID, mmol float64) float64 { return mmol / 1e6 * constituent.Must(id).Molar }
	of := grams{"CA": gram("CA", calcium), "MG": gram("MG", magnesium), "CO2": gram("CO2", bicarbonate+gas), "CLD": gram("CLD", max(2*calcium+2*magnesium-bicarbonate, 0)), "CITAC": gram("CITAC", citric)}
	of["WATER"] = 1 - of["CO2"] - of["CITAC"]
	pot, lab := assaytest.Pot(draws, assaytest.Poured{Code: "water", Grams: 1000, SD: 100, Group: "water", Holds: of})
	return chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 25, Read: acidity.Surely{}}), lab.Gauge.Volume(pot)[0] / 1000
}

// Hardness and alkalinity are written as calcium carbonate, 100.09 g/mol: a mol of it for a
// mol of calcium or magnesium, and for two of bicarbonate, of which a titration to pH 4.5
// (ISO 9963-1) takes all but a hundredth.
func TestHardnessAndAlkalinity(t *testing.T) {
	for _, w := range []struct{ calcium, magnesium, bicarbonate float64 }{{2, 1, 4}, {1, 0, 2}, {0.5, 0.75, 1.5}} {
		c, litres := brewing(w.calcium, w.magnesium, w.bicarbonate, 0)
		require.NotNil(t, c.Water)
		assert.InEpsilon(t, (w.calcium+w.magnesium)*100.09/litres, c.Water.Hardness.Mean, 0.001)
		assert.InEpsilon(t, w.bicarbonate/2*100.09/litres, c.Water.Alkalinity.Mean, 0.04)
		assert.Less(t, c.Water.Hardness.SD, 0.01*c.Water.Hardness.Mean, "a little more of a water is as hard")
		assert.Equal(t, "mg/l", c.Water.Hardness.Unit)
	}
}

// Carbon dioxide adds no alkalinity and takes none: its acid and its bicarbonate come
// together (ISO 9963-1 asks of a fizzy sample that the gas be driven out first). Its burette
// finds the same acid.
func TestFizzLeavesTheAlkalinity(t *testing.T) {
	for _, gas := range []float64{0.5, 3, 200} { // mmol/l beside the bicarbonate; the last is 8.8 g/l
		flat, _ := brewing(0.8, 0.3, 0.8, 0)
		fizzy, _ := carbonated(0.8, 0.3, 0.8, gas)
		require.NotNil(t, fizzy.Water, "%g", gas)
		assert.InEpsilon(t, flat.Water.Alkalinity.Mean, fizzy.Water.Alkalinity.Mean, 0.02, "%g mmol/l", gas)
		assert.InDelta(t, flat.Acidity[0].Per100g.Mean, fizzy.Acidity[0].Per100g.Mean, 2e-6, "%g mmol/l", gas)
	}
}

// What is sour is no water, and what has next to nothing is not worth a word. Without
// bicarbonate a litre takes but the acid of the end point, and where there is more in it
// already nothing, not less than nothing.
func TestWhatHasNoHardness(t *testing.T) {
	sour, _ := brewing(2, 1, 4, 3)
	assert.Nil(t, sour.Water)
	none, _ := brewing(0.005, 0, 0, 0.1)
	assert.Nil(t, none.Water)
	pure, _ := brewing(0, 0, 0, 0)
	assert.Nil(t, pure.Water, "what pH 4.5 itself takes is no alkalinity of a water")
	trace, _ := brewing(0.005, 0, 0.01, 0)
	assert.Nil(t, trace.Water)
	// A tenth of a millimole of potassium bicarbonate: 5 mg/l, and no hardness.
	const mmol = 0.1 / 1e6
	pot, lab := assaytest.Pot(draws, assaytest.Poured{Code: "water", Grams: 1000, Group: "water", Holds: grams{"WATER": 1 - mmol*44.01, "K": mmol * 39.098, "CO2": mmol * 44.01}})
	some := chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 25, Read: acidity.Surely{}}).Water
	require.NotNil(t, some)
	assert.Zero(t, some.Hardness.Mean)
	assert.InDelta(t, 5+1.6, some.Alkalinity.Mean, 0.3)
	soft, _ := brewing(0.02, 0, 0, 0)
	require.NotNil(t, soft.Water)
	assert.InDelta(t, 2, soft.Water.Hardness.Mean, 0.01)
	assert.InDelta(t, 50.04*math.Pow(10, -1.5), soft.Water.Alkalinity.Mean, 0.05, "what pH 4.5 itself takes of acid, 10^−4.5 mol/l")
	acid, _ := brewing(1, 0, 0, 0.1)
	require.NotNil(t, acid.Water, "of less acid than a burette reads")
	assert.Zero(t, acid.Water.Alkalinity.Mean)
}
