package chemistry_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
)

// bench is a juice whose bench titration ends at a pH, with so much of an acid or of a
// salt poured in afterwards.
func bench(t *testing.T, lastPH, more string) *chemistry.Chemistry {
	t.Helper()
	text := fmt.Sprintf("drink: x\nserves: 1\ncomponents:\n  juice:\n    ingredients: [100 g core:orange-juice]\n"+
		"    measured: {titration: [[0 ml, 3.6], [4 ml, 4.3], [8 ml, 5.2], [11 ml, 6.5], [12 ml, %s]], base: 0.1 mol/l, sample: 10.0 g}\nbuild: [100 g juice%s]\n", lastPH, more)
	return assaytest.Assay(t, assaytest.Core(t), text, draws).Chemistry
}

// A titration speaks of the pH at which somebody read, and of 0.3 beyond
// (data/acid_unmeasured.csv): more acid or base than that has no pH but a bound, and an end
// point further on no acidity.
func TestATitrationSpeaksOfWhatWasRead(t *testing.T) {
	for last, given := range map[string][3]bool{"8.20": {true, true, true}, "7.85": {true, true, false}, "7.20": {false, true, false}} {
		c := bench(t, last, "")
		require.Empty(t, c.PHMeter.Why)
		for i, is := range given {
			assert.Equal(t, is, c.Acidity[i].Per100g.Why == "", "%s, %g", last, c.Acidity[i].EndPoint)
			assert.Equal(t, c.Acidity[i].Per100g.Why, c.Acidity[i].PerLitre.Why)
		}
		assert.Equal(t, c.Acidity[0].Per100g.Why, c.BrixAcid.Why)
		assert.Equal(t, c.Acidity[0].Per100g.Why, c.BrixCorrected.Why)
		assert.Contains(t, c.StrongIons.Why, "titration")
		assert.Empty(t, c.Capacity.Why)
	}
	sour := bench(t, "8.20", ", 5 g core:citric-acid")
	assert.Contains(t, sour.PHMeter.Why, "more acid than juice was titrated (down to pH 3.60)")
	assert.Equal(t, 3.6, sour.PHMeter.High)
	assert.True(t, math.IsNaN(sour.PHMeter.Mean))
	assert.Empty(t, sour.Acidity[0].Per100g.Why, "the end point is within it")
	lean := bench(t, "6.60", ", 20 g core:dipotassium-phosphate")
	assert.Contains(t, lean.PHMeter.Why, "less acid than juice was titrated (up to pH 6.60)")
	assert.Equal(t, 6.6, lean.PHMeter.Low)
}

// An acid whose potassium nobody states has any pH from its own to that of its salt: where
// that is wide it is withheld for its potassium; of a pinch of it beside a known acid it is
// not.
func TestUnknownPotassiumOpensThePH(t *testing.T) {
	of := func(amount float64) *chemistry.Chemistry {
		pot, lab := assaytest.Pot(draws,
			assaytest.Poured{Code: "verjuice", Grams: amount, Group: "water", Holds: grams{"WATER": 0.98, "MALAC": 0.02}, Most: grams{"K": math.NaN()}},
			assaytest.Poured{Code: "acid", Grams: 100, SD: 1, Group: "water", Holds: grams{"WATER": 0.99, "CITAC": 0.01}})
		return chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 25, Read: acidity.Surely{}})
	}
	much := of(200)
	assert.Contains(t, much.PHMeter.Why, "potassium unknown of own:verjuice")
	assert.NotEmpty(t, much.PH.Why)
	assert.Empty(t, much.Acidity[0].Per100g.Why, "a burette would see the same acid")
	pinch := of(5)
	require.Empty(t, pinch.PHMeter.Why)
	assert.Greater(t, pinch.PHMeter.High-pinch.PHMeter.Mean, 5*(pinch.PHMeter.Mean-pinch.PHMeter.Low), "potassium makes it less acid")
}

// How much gas is in a soda nobody states: its pH and its gas are withheld, and what it has
// when that is gone is given. A sour drink's pH is not moved by gas.
func TestGasThatNobodyStates(t *testing.T) {
	lib := assaytest.Core(t)
	soda := assaytest.Glass(t, lib, "core:soda-water", 25)
	assert.Contains(t, soda.PHMeter.Why, "how much gas is in it nobody has stated")
	assert.True(t, soda.CO2.Unknown && math.IsNaN(soda.CO2.Mean))
	assert.Empty(t, soda.Degassed.Why)
	assert.InDelta(t, 8.3, soda.Degassed.Mean, 0.6, "a bicarbonate water in air, pH about 8.3 (general chemistry)")
	cola := assaytest.Glass(t, lib, "core:cola", 25)
	assert.Empty(t, cola.PHMeter.Why)
	assert.True(t, cola.CO2.Unknown)
}

// A withheld pH has none without gas either, and says why; a sour one hardly moves.
func TestDegassed(t *testing.T) {
	fizzy, lab := assaytest.Pot(draws, assaytest.Poured{Code: "fizz", Grams: 100, Group: "water", Holds: grams{"WATER": 0.995, "CO2": 0.005}, Spread: grams{"CO2": 0.1}})
	c := chemistry.Of(lab, chemistry.Liquid{Pot: fizzy, Celsius: 25, Degassed: true})
	assert.InDelta(t, 5.6, c.Degassed.Mean, 0.05, "water in air (general chemistry)")
	assert.Greater(t, c.Degassed.Mean, c.PHMeter.High)
	assert.InDelta(t, 5*c.Density.Mean, c.CO2.Mean, 0.02, "g/l")
	assert.Equal(t, "g/l", c.CO2.Unit)
	thick, lab := assaytest.Pot(draws, assaytest.Poured{Code: "thick", Grams: 100, Holds: grams{"WATER": 0.965, "PROCNT": 0.03, "CO2": 0.005}})
	c = chemistry.Of(lab, chemistry.Liquid{Pot: thick, Celsius: 25, Degassed: true})
	require.NotEmpty(t, c.PHMeter.Why)
	assert.Equal(t, c.PHMeter.Why, c.Degassed.Why)
	assert.True(t, math.IsNaN(c.Degassed.Mean))
}

// The curve of what was titrated further down than it is now reaches down there: less base
// than none, none at its own pH, and no point of the half pH beside that.
func TestACurveReachesAsFarAsWasTitrated(t *testing.T) {
	for _, salt := range []string{"1.6 g", "2.4 g", "3.2 g"} {
		c := bench(t, "8.20", ", "+salt+" core:tripotassium-citrate")
		require.Empty(t, c.PHMeter.Why)
		own := c.PHMeter.Mean
		require.Greater(t, own, 3.9)
		require.NotEmpty(t, c.Curve)
		assert.Equal(t, 3.6, c.Curve[0].PH)
		points := 0
		for _, p := range c.Curve {
			switch {
			case math.Abs(p.PH-own) < 1e-6:
				points++
				assert.Zero(t, p.Base)
			case p.PH < own:
				assert.Negative(t, p.Base)
			default:
				assert.Positive(t, p.Base)
			}
			if p.PH > 3.6 && p.PH < 8.1 && p.Base != 0 {
				assert.GreaterOrEqual(t, math.Abs(p.PH-own), 0.25, "%g beside %g", p.PH, own)
				assert.Zero(t, math.Mod(p.PH, 0.5))
			}
		}
		assert.Equal(t, 1, points)
	}
}
