package drivers_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// weighed is two foods of one constituent each, so that only the amounts are uncertain.
const weighed = `
drink: "Two Scales"
serves: 1
foods:
  wet: {name: "Water of the test", per: 100 g, values: {WATER: 100 g}, source: "invented"}
  dry: {name: "Sugar of the test", per: 100 g, values: {WATER: 0 g, SUCS: 100 g}, source: "invented"}
build: [200 g ± 4 g sd own:wet, 100 g ± 6 g sd own:dry]
%s
`

// boiled is a syrup whose evaporation nobody has weighed.
const boiled = `
drink: "Long Boil"
serves: 1
components:
  syrup:
    ingredients: [200 g ± 6 g core:orange-juice, 120 g ± 4 g core:sugar-white, 3 g ± 0.3 g core:citric-acid, 30 g ± 3 g core:lemon-juice]
    steps:
      - reduce: {by: 15 %% ± 8 %%}
    %s
build: [60 g ± 1 g syrup, 100 g core:milk-whole]
`

// The water of two weighings is their sum, and its variance 4² + 6²: their
// shares are 16/52 and 36/52.
func TestDriversOfASumAreItsVariances(t *testing.T) {
	const text = `
drink: "Two Jugs"
serves: 1
foods:
  wet: {name: "Water of the test", per: 100 g, values: {WATER: 100 g}, source: "invented"}
build: [200 g ± 4 g sd own:wet, 100 g ± 6 g sd own:wet]
`
	d := assaytest.Asked(t, assaytest.Library{}, text, assaytest.Options{Draws: 4000, Want: assay.Want{Why: "WATER"}}).Drivers
	require.NotNil(t, d)
	require.Len(t, d.Inputs, 2)
	assert.InDelta(t, 36.0/52, d.Inputs[0].Share, 0.05, "ranks lose a little: (6/π·arcsin(r/2))² of r²")
	assert.InDelta(t, 16.0/52, d.Inputs[1].Share, 0.05)
	assert.InDelta(t, d.Inputs[0].Share+d.Inputs[1].Share, d.Shares[estimate.Hand], 1e-12)
	assert.True(t, d.Inputs[0].Raises)
}

// Caffeine is 100 mg ± 10 % by the table and 50 g ± 5 % by the hand: of the
// variance of the product, 100/(100 + 25) and 25/(100 + 25) in a hundred.
func TestDriversTellTheTableFromTheHand(t *testing.T) {
	const text = `
drink: "Half and Half"
serves: 1
foods:
  dark: {name: "Coffee of the test", per: 100 g, values: {WATER: 98 g ± 0.01 g sd, CAFFN: 100 mg ± 10 mg sd}, source: "invented"}
  wet: {name: "Water of the test", per: 100 g, values: {WATER: 100 g}, source: "invented"}
build: [50 g ± 2.5 g sd own:dark, 100 g ± 30 g own:wet]
`
	d := assaytest.Asked(t, assaytest.Library{}, text, assaytest.Options{Draws: 4000, Want: assay.Want{Why: constituent.Caffeine}}).Drivers
	require.NotNil(t, d)
	assert.InDelta(t, 0.80, d.Shares[estimate.Tables], 0.04)
	assert.InDelta(t, 0.20, d.Shares[estimate.Hand], 0.04)
	assert.InDelta(t, 0, d.Rest, 0.05, "ranks lose a little of a product")
	require.Len(t, d.Inputs, 2, "the water has nothing to do with it: %v", d.Inputs)
	assert.Equal(t, "caffeine of own:dark", d.Inputs[0].Name)
}

// A reading takes the hand's part away; what is left is the instrument's.
func TestReadingBecomesADriver(t *testing.T) {
	text := fmt.Sprintf(weighed, "finish:\n  - measured: {mass: 310 g ± 2 g sd, brix: 35 ± 0.3 sd}")
	d := assaytest.Asked(t, assaytest.Library{}, text, assaytest.Options{Draws: 2000, Want: assay.Want{Why: "SUCS"}}).Drivers
	t.Log(d.Shares, d.Rest)
	assert.Greater(t, d.Shares[estimate.Readings], 0.8)
	assert.Less(t, d.Shares[estimate.Hand], 0.2)
}

func TestDriversOfWhatIsNotThere(t *testing.T) {
	assert.Nil(t, assaytest.Asked(t, assaytest.Library{}, fmt.Sprintf(weighed, ""), assaytest.Options{Draws: 50, Want: assay.Want{Why: constituent.Caffeine}}).Drivers)
	exactly := "drink: \"Exact\"\nserves: 1\nfoods:\n  wet: {name: \"Water\", per: 100 g, values: {WATER: 100 g}, source: \"x\"}\nbuild: [100 g ± 0 g own:wet]\n"
	d := assaytest.Asked(t, assaytest.Library{}, exactly, assaytest.Options{Draws: 50, Want: assay.Want{Why: "WATER"}}).Drivers
	require.NotNil(t, d)
}

// What --next promises is what the reading then does.
func TestSuggestionsKeepTheirPromise(t *testing.T) {
	lib := assaytest.Core(t)
	o := assaytest.Options{Draws: 2000, Want: assay.Want{Next: true, Figures: []constituent.ID{"SUGAR", "SUCS", "CITAC", "CAFFN"}}}
	a := assaytest.Asked(t, lib, fmt.Sprintf(boiled, ""), o)
	require.NotEmpty(t, a.Suggestions)
	first := a.Suggestions[0]
	t.Log(first.Of, first.Reading, first.Expect, first.Narrows)
	assert.Equal(t, "syrup", first.Of)
	for i := 1; i < len(a.Suggestions); i++ {
		assert.GreaterOrEqual(t, a.Suggestions[i-1].Score, a.Suggestions[i].Score)
	}
	for _, s := range a.Suggestions {
		if s.Of != "syrup" || s.Reading != "brix" {
			continue
		}
		taken := assaytest.Asked(t, lib, fmt.Sprintf(boiled, fmt.Sprintf("measured: {brix: %.1f}", s.Expect.Mean)), o)
		for _, n := range s.Narrows {
			before, after := assaytest.Figure(t, a.PerServing, n.Constituent.ID), assaytest.Figure(t, taken.PerServing, n.Constituent.ID)
			assert.InDelta(t, 1-n.By, (after.SD/after.Mean)/(before.SD/before.Mean), 0.10, "%s", n.Constituent.ID)
		}
		for _, again := range taken.Suggestions {
			assert.False(t, again.Of == "syrup" && again.Reading == "brix", "a reading taken is not proposed again")
		}
		return
	}
	assert.Fail(t, "brix of the syrup is not among the suggestions")
}
