package assay_test

import (
	"fmt"
	"testing"

	"sipsum/internal/assay/assaytest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// No share is more than all: 100 % splits every gram of the sucrose in every draw, and
// never more than there is.
func TestNoShareIsMoreThanAll(t *testing.T) {
	lib := assaytest.Core(t)
	sucrose := func(share string) (low, mean, high float64) {
		a := assaytest.Assay(t, lib, fmt.Sprintf("drink: x\nserves: 1\ncomponents:\n  pot: {ingredients: [50 g core:sugar-white, 50 g core:water-pure], steps: [{invert: {share: %s}}]}\nbuild: [100 g pot]\n", share), 200)
		f, ok := a.PerServing.Find("SUCS")
		require.True(t, ok)
		return f.Low, f.Mean, f.High
	}
	low, mean, high := sucrose("100 %")
	assert.InDeltaSlice(t, []float64{0, 0, 0}, []float64{low, mean, high}, 1e-9)
	for _, share := range []string{"97 % ± 6 %", "100 % ± 4 %", "99 % ± 2 % sd"} {
		low, mean, high = sucrose(share)
		assert.GreaterOrEqual(t, low, 0.0, share)
		assert.LessOrEqual(t, low, mean, share)
		assert.LessOrEqual(t, mean, high, share)
		assert.Positive(t, high, share)
	}
}

// What a step makes is printed in words, and its figures keep their source.
func TestWhatAStepMakesHasWordsAndASource(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild: [150 g core:water-pure]\nfinish: [{carbonate: {left: 5 g/l}}]\n", 20)
	gas, _ := a.PerServing.Find("CO2")
	last := gas.Contributions[len(gas.Contributions)-1]
	assert.NotContains(t, last.Food, ":")
	assert.Equal(t, "core", last.Table)
	assert.NotEmpty(t, last.Source)
}

// A total of which some parts are known is not unknown: prunes have sorbitol.
func TestAnAmountIsKnownWhereAPartIs(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild: [100 g core:prune]\n", 20)
	mean, _, known := a.AmountOf("POLYL")
	assert.Greater(t, mean, 5.0)
	assert.True(t, known)
}

// What a ferment leaves of the sugar beside what is stated is mass; what arithmetic leaves
// is none.
func TestAFermentLeavesNoDust(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), `
drink: x
serves: 1
components:
  pot:
    ingredients: [7.2 g core:blueberry-juice, 39 g core:coconut-milk-fresh, 200 g core:plum-juice, 12 g core:xylitol]
    steps: [{ferment: {after: {LACAC: 300 mg, ACEAC: < 50 mg}, for: 2 days, because: "invented"}}]
build: [47.2 g pot]
`, 60)
	for d, x := range a.Serving.Total("MASS-other") {
		assert.True(t, x == 0 || x > 1e-9, "draw %d: %g g", d, x)
	}
}
