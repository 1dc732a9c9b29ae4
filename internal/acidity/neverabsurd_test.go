package acidity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/drink"
)

// A spirit and a syrup of sugar have no pH of their own: the water decides.
func TestWhatHardlyBuffersHasNoPHOfItsOwn(t *testing.T) {
	lib := assaytest.Core(t)
	for _, text := range []string{
		"drink: x\nserves: 1\nbuild: [100 g core:vodka-40]\n",
		"drink: x\nserves: 1\nbuild: [100 g core:sugar-white, 100 g core:water-brew]\n",
	} {
		assert.Contains(t, assaytest.Assay(t, lib, text, 200).Chemistry.PHMeter.Why, "hardly buffers")
	}
}

// How much gas is in a soda nobody states: it is not that of air, and not none.
func TestGasThatNobodyStatesLeavesThePHOpen(t *testing.T) {
	c := assaytest.Glass(t, assaytest.Core(t), "core:soda-water", 25)
	assert.Contains(t, c.PHMeter.Why, "gas")
	assert.True(t, c.CO2.Unknown)
	assert.Empty(t, c.Degassed.Why)
	assert.InDelta(t, 8.3, c.Degassed.Mean, 0.6, "a bicarbonate water in air, pH about 8.3 (general chemistry)")

	cola := assaytest.Glass(t, assaytest.Core(t), "core:cola", 25)
	assert.Empty(t, cola.PHMeter.Why, "gas does not move the pH of a sour drink")
	assert.True(t, cola.CO2.Unknown)
}

// A pack states sodium and no acids: that is no lye.
func TestAPackIsNoLye(t *testing.T) {
	for _, group := range []string{"", "group: plant drink, "} {
		text := "drink: x\nserves: 1\nfoods:\n  oat: {name: Oat, " + group + "per: 100 g, values: {FAT: 1.5 g, CHOAVL: 5.6 g, SUGAR: 3.1 g, PROCNT: 0.8 g, NA: 40 mg, K: 120 mg}, source: \"pack\"}\n" +
			"build: [100 g own:oat]\n"
		if pH := assaytest.Assay(t, assaytest.Core(t), text, 200).Chemistry.PHMeter; pH.Why == "" {
			assert.Less(t, pH.High, 8.5, group)
		}
	}
}

// A trace of a food without a figure for potassium does not take a pH away; a drink of it
// does.
func TestMissingPotassiumCountsByItsAmount(t *testing.T) {
	pH := func(grams string) chemistry.Estimate {
		return assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\nfoods:\n  sour: {name: Sour, per: 100 g, values: {WATER: 90 g, CITAC: 5 g}, source: \"invented\"}\n"+
			"build: [150 g core:plum-juice, "+grams+" own:sour]\n", 200).Chemistry.PHMeter
	}
	trace, plum := pH("0.001 g"), assaytest.Glass(t, assaytest.Core(t), "core:plum-juice", 25).PHMeter
	require.Empty(t, trace.Why)
	assert.InDelta(t, plum.Mean, trace.Mean, 0.01)
	assert.InDelta(t, plum.High, trace.High, 0.1)
	much := pH("300 g")
	assert.True(t, much.Why != "" || much.High-much.Low > 0.8)
}

// Milk that hot acid parted was at most at the pH at which casein curdles there
// (data/curdling_proteins.csv); its own acids say how far below.
func TestPartedMilkIsAsSourAsMilkParts(t *testing.T) {
	punch := func(lemon string) chemistry.Estimate {
		text := "drink: x\nserves: 1\nat: 25 °C\ncomponents:\n  punch:\n    ingredients: [200 g core:milk-whole, " + lemon + " core:lemon-juice]\n    steps:\n" +
			"      - curdle: {collect: 160 g, by: acid, at: 60 °C}\nbuild: [30 g punch]\n"
		return chemistryOf(t, assaytest.Assay(t, assaytest.Core(t), text, 500), "punch").PHMeter
	}
	assert.LessOrEqual(t, punch("10 g").High, 6.1)
	sour := punch("40 g")
	require.Empty(t, sour.Why)
	assert.LessOrEqual(t, (sour.High-sour.Low)/2, 0.6)
	assert.Less(t, sour.Mean, 4.6, "well below the isoelectric point of casein (Fox and McSweeney 1998)")
}

// A burette tells how much acid there is; how sour a coffee is stays as published.
func TestAnAcidityTakesNoPublishedPHAway(t *testing.T) {
	c := chemistryOf(t, assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\ncomponents:\n  shot: {ingredients: [36 g core:espresso], measured: {ta: 0.17 %}}\nbuild: [30 g shot]\n", 500), "shot")
	require.Empty(t, c.PHMeter.Why)
	assert.InDelta(t, 5.5, c.PHMeter.Mean, 0.05)
	assert.InDelta(t, 0.17, c.Acidity[0].Per100g.Mean, 0.002)
}

// The weights of two measurements do not hang on the draws of a run.
func TestCentralPHHangsOnNoSeed(t *testing.T) {
	lib := assaytest.Core(t)
	central := func(o assaytest.Options) float64 {
		d, faults := drink.Parse("test", []byte("drink: x\nserves: 1\nbuild: [50 g core:wine-red, 20 g core:orange-juice, 10 g core:apricot]\n"), nil)
		a, err := assaytest.Run(t.Context(), d, faults, lib, o)
		require.NoError(t, err)
		return a.Chemistry.PHMeter.Mean
	}
	first := central(assaytest.Options{Draws: 400, Seed: 1})
	assert.InDelta(t, first, central(assaytest.Options{Draws: 400, Seed: 7}), 1e-9)
	assert.InDelta(t, first, central(assaytest.Options{Draws: 60, Seed: 7}), 1e-9)
}
