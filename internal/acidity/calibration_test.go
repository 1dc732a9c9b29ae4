package acidity_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/food"
)

// The composition of coffee leaves its pH open. Filter coffee has that of Rao and Fuller
// 2018 and of a preprint of 2023; the 744 drip brews of Batali et al. 2021, pH 4.85 to
// 5.20, are in neither.
func TestPHOfCoffeeHoldsAnotherPublication(t *testing.T) {
	c := assaytest.Glass(t, assaytest.Core(t), "core:filter-coffee", 25)
	require.Empty(t, c.PHMeter.Why)
	require.Len(t, c.RestsOn, 1)
	assert.Equal(t, "rao2018 packaged2023", c.RestsOn[0].Source)
	assert.LessOrEqual(t, c.PHMeter.Low, 4.85)
	assert.GreaterOrEqual(t, c.PHMeter.High, 5.20)
	assert.LessOrEqual(t, (c.PHMeter.High-c.PHMeter.Low)/2, 0.4)
	t.Logf("filter coffee %.2f (%.2f–%.2f)", c.PHMeter.Mean, c.PHMeter.Low, c.PHMeter.High)
}

// Where the composition tells a pH too, each of the two counts by its spread.
func TestAPublishedPHIsEvidenceBesideTheComposition(t *testing.T) {
	lib := assaytest.Core(t)
	both := assaytest.Glass(t, lib, "core:orange-juice", 25)
	require.Empty(t, both.PHMeter.Why)
	assert.Len(t, both.RestsOn, 1)
	alone := assaytest.Glass(t, assaytest.WithoutPH(lib), "core:orange-juice", 25)
	require.Empty(t, alone.PHMeter.Why)
	published, _ := lib[food.ID{Table: "core", Code: "orange-juice"}].Value("PH")
	low, high := min(published.Amount, alone.PHMeter.Mean), max(published.Amount, alone.PHMeter.Mean)
	require.Greater(t, high-low, 0.05, "else the test tells nothing")
	assert.Greater(t, both.PHMeter.Mean, low+0.005)
	assert.Less(t, both.PHMeter.Mean, high-0.005)
}

// No tea is alkaline: the anion that no table names is there, as much of it a weak acid as
// tea can hold. With eight grams of lemon juice (5.03 % of citric acid, 208 g in all) the
// acidity is the lemon's 0.195 % and what the tea's own adds to it.
func TestTeaWithLemonIsAsSourAsTheLemon(t *testing.T) {
	lib := assaytest.Core(t)
	tea := assaytest.Glass(t, lib, "core:black-tea", 25).PHMeter
	assert.Less(t, tea.High, 7.5)
	c := assaytest.Assay(t, lib, "drink: x\nserves: 1\nat: 25 °C\nbuild: [200 g core:black-tea, 8 g core:lemon-juice]\n", 1000).Chemistry
	assert.InDelta(t, 0.22, c.Acidity[0].Per100g.Mean, 0.03)
	require.Empty(t, c.PHMeter.Why)
	assert.InDelta(t, 3.5, c.PHMeter.Mean, 0.3, "about 3.5, common practice, no source")
}

// Two works are worth what they print and what a meter is off by; a pH that was read takes
// their place, and so does a titration.
func TestAReadingTakesThePlaceOfAPublishedPH(t *testing.T) {
	lib := assaytest.Core(t)
	coffee := func(read string) *chemistry.Chemistry {
		return chemistryOf(t, assaytest.Assay(t, lib, "drink: x\nserves: 1\ncomponents:\n  shot:\n    ingredients: [36 g core:espresso]\n"+read+"build: [36 g shot]\n", 1000), "shot")
	}
	published := coffee("")
	require.Len(t, published.RestsOn, 1)
	assert.InDelta(t, 5.21, published.RestsOn[0].Low, 1e-9)
	assert.InDelta(t, 5.97, published.RestsOn[0].High, 1e-9)
	assert.InDelta(t, 0.34, (published.PHMeter.High-published.PHMeter.Low)/2, 0.03)

	read := coffee("    measured: {ph: 5.05}\n")
	assert.Empty(t, read.RestsOn)
	assert.InDelta(t, 5.05, read.PHMeter.Mean, 0.005)
	assert.InDelta(t, 0.045, (read.PHMeter.High-read.PHMeter.Low)/2, 0.01)

	titrated := coffee("    measured: {titration: [[0 ml, 5.05], [1 ml, 5.6], [2 ml, 6.3], [3 ml, 7.1], [4 ml, 8.3]], base: 0.1 mol/l, sample: 20.0 g}\n")
	assert.Empty(t, titrated.RestsOn)
	assert.InDelta(t, 5.05, titrated.PHMeter.Mean, 0.05)

	acidity := coffee("    measured: {ta: 0.30 g/100 g}\n")
	assert.Len(t, acidity.RestsOn, 1, "an acidity alone does not tell the pH")
}

// The ion goes with what is dissolved: through a cloth, and when water boils away; two jars
// of one coffee are one coffee.
func TestAPublishedPHGoesThroughStepsAndBlends(t *testing.T) {
	lib := assaytest.Core(t)
	const text = "drink: x\nserves: 1\ncomponents:\n  shot:\n    ingredients: [36 g core:espresso]\n    steps: [%s]\nbuild: [10 g shot, 10 g core:espresso]\n"
	c := assaytest.Assay(t, lib, fmt.Sprintf(text, "strain: {collect: 30 g, through: cloth}"), 1000).Chemistry
	assert.InDelta(t, 5.5, c.PHMeter.Mean, 0.02)
	assert.Len(t, c.RestsOn, 1)
	c = assaytest.Assay(t, lib, fmt.Sprintf(text, "reduce: {by: 15 %}"), 1000).Chemistry
	assert.InDelta(t, 5.5, c.PHMeter.Mean, 0.1)
}

// In a sour drink the acid decides: the interval of coffee with a syrup is narrower than
// that of the coffee, and the syrup's own is met as its share grows.
func TestABlendWithCoffeeHasASensibleInterval(t *testing.T) {
	lib := assaytest.Core(t)
	pH := func(syrup float64) chemistry.Estimate {
		return assaytest.Assay(t, lib, fmt.Sprintf("drink: x\nserves: 1\nat: 25 °C\nbuild: [36 g core:espresso, %g g core:passion-fruit-juice-purple]\n", syrup), 1000).Chemistry.PHMeter
	}
	var before chemistry.Estimate
	for i, grams := range []float64{1, 5, 20, 60} {
		now := pH(grams)
		require.Empty(t, now.Why)
		t.Logf("%g g: %.2f (%.2f–%.2f)", grams, now.Mean, now.Low, now.High)
		if i > 0 {
			assert.Less(t, now.Mean, before.Mean)
		}
		before = now
	}
	assert.Less(t, before.High-before.Low, 0.9)
}

// Of cascara nobody has published an acid: its pH is known, how much of a syrup's acid it
// takes up is not. None of its acid or all that it may hold must be within the interval.
func TestAPublishedPHDoesNotTellTheAcids(t *testing.T) {
	lib := assaytest.Core(t)
	alone := assaytest.Glass(t, lib, "core:cascara-infusion", 25)
	require.Empty(t, alone.PHMeter.Why)
	assert.Contains(t, alone.Acidity[0].Per100g.Why, "acids unknown of core:cascara-infusion")
	assert.NotEmpty(t, alone.Capacity.Why)
	assert.Empty(t, alone.Curve)

	blend := assaytest.Assay(t, lib, "drink: x\nserves: 1\nat: 25 °C\nbuild: [100 g core:cascara-infusion, 1.0 g core:citric-acid]\n", 1000).Chemistry
	t.Logf("with 1 g of citric acid: %.2f (%.2f–%.2f) %s", blend.PHMeter.Mean, blend.PHMeter.Low, blend.PHMeter.High, blend.PHMeter.Why)
	assert.Less(t, blend.PHMeter.Low, 2.7, "a hundredth of citric acid in water has pH 2.3 (own: TestAcidityOfASolutionMadeByFormula)")
}

// Grounds brewed here have the pH that laboratories read of coffee brewed from such beans:
// the 744 drip brews of Batali et al. 2021 lie between 4.85 and 5.20.
func TestBrewedGroundsHaveThePHOfSuchBrews(t *testing.T) {
	c := assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\nat: 25 °C\ncomponents:\n  coffee:\n    ingredients: [15 g core:coffee-roasted-arabica, 250 g core:water-brew]\n"+
		"    steps:\n      - brew: {out: 215 g, strength: 1.3 %}\nbuild: [200 g coffee]\n", 1000).Chemistry
	require.Empty(t, c.PHMeter.Why)
	require.Len(t, c.RestsOn, 1)
	assert.True(t, c.RestsOn[0].Brewed)
	assert.Greater(t, c.PHMeter.Mean, 4.85)
	assert.Less(t, c.PHMeter.Mean, 5.20)
	assert.LessOrEqual(t, (c.PHMeter.High-c.PHMeter.Low)/2, 0.6)
}

// Acid whey may hold no lactic acid, or as much as any fermented milk, 1.2 g. At its
// published pH of 4.6 a pK of 3.86 leaves 15 % of that to titrate: 2.0 mmol, 0.13 g as
// citric acid, by which its acidity is open.
func TestAcidThatIsUnknownUpToItsBoundCounts(t *testing.T) {
	lib := assaytest.Core(t)
	whey := assaytest.Glass(t, lib, "core:whey-acid", 25)
	assert.InDelta(t, 4.6, whey.PHMeter.Mean, 0.02, "its pH has been published whatever it holds")
	acidity := whey.Acidity[0].Per100g
	assert.Greater(t, acidity.High-acidity.Low, 0.12)

	blend := assaytest.Assay(t, lib, "drink: x\nserves: 1\nat: 25 °C\nbuild: [140 g core:whey-acid, 1.0 g core:citric-acid, 36 g core:espresso]\n", 1000).Chemistry.PHMeter
	require.Empty(t, blend.Why)
	t.Logf("with citric acid and coffee %.2f (%.2f–%.2f)", blend.Mean, blend.Low, blend.High)
	assert.Greater(t, blend.High-blend.Low, 0.2, "what takes the acid up is open")
	assert.Less(t, blend.High-blend.Low, 1.0)
}
