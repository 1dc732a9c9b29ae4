package batch_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/batch"
	"sipsum/internal/estimate"
)

// What a pot was read to weigh is what it makes: of 900 g that are read as 850 g, 900 g want 18/17 of
// the recipe.
func TestAPotMakesWhatWasRead(t *testing.T) {
	const text = `
drink: "Read"
serves: 2
scale: 0.1 g
components:
  syrup:
    ingredients: [600 g core:water-pure, 300 g core:sugar-white]
    measured: {mass: 850 g}
build: [450 g syrup]
`
	r := found(t, "read", text, assaytest.Core(t), nil)
	bench := benchOf(r)
	a, err := assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 101}).Run(context.Background(), nil, assay.Want{})
	require.NoError(t, err)
	bench.Yields = a.Yields
	b, err := batch.Make(context.Background(), bench, batch.Ask{Serves: 4})
	require.NoError(t, err)
	assert.InEpsilon(t, 900.0/850, b.Pots[0].Times, 1e-3)
	assert.InEpsilon(t, 900, b.Pots[0].Out, 1e-3)
	assert.GreaterOrEqual(t, b.Purchases[0].Weighed+b.Purchases[1].Weighed, 900*900/850.0*(1-1e-3))
}

// The card never rounds away what it tells to weigh: 6 g of acid for four are 1.5 g, whatever the bar's
// scale shows, and 10.5 g for seven.
func TestNothingIsRoundedAway(t *testing.T) {
	const text = `
drink: "Sharp"
serves: 4
scale: 1 g
build: [6 g core:citric-acid, 40 g core:sugar-white, 760 g core:water-pure]
`
	r := found(t, "sharp", text, assaytest.Core(t), nil)
	b := batchOf(t, r, batch.Ask{Serves: 7})
	acid := b.Build[0]
	assert.Equal(t, 1.5, acid.Rounded.Number)
	assert.Equal(t, 10.5, acid.All.Rounded.Number)
	assert.True(t, acid.Step.Coarse, "a scale of 1 g does not weigh it")
	assert.False(t, b.Build[2].Step.Coarse)
	assert.InDelta(t, 0.5/1.5, b.Rounding.Share, 1e-3, "which shows 2 g")
}

// What a scale does not show may be anything down to nothing: half a tenth of a gram on a scale of
// 0.1 g is 0 to 0.1 g, and rounded twice as much as it should be.
func TestWhatTheScaleDoesNotShow(t *testing.T) {
	const text = `
drink: "Faint"
serves: 1
scale: 0.1 g
build: [0.05 g core:citric-acid, 20 g core:sugar-white, 180 g core:water-pure]
`
	r := found(t, "faint", text, assaytest.Core(t), nil)
	bench := benchOf(r)
	bench.Hands = assay.Prepare(r, estimate.Ensemble{Seed: 3, N: 401, Only: amount.Stream})
	b, err := batch.Make(context.Background(), bench, batch.Ask{Serves: 1})
	require.NoError(t, err)
	assert.Equal(t, 0.05, b.Build[0].Rounded.Number)
	assert.True(t, b.Build[0].Step.Finer, "half of 0.01 g is a tenth of it")
	assert.InDelta(t, 1, b.Rounding.Share, 1e-6)
	assert.InDelta(t, 0.0953, b.Precision.Inside, 0.04, "sour is held to 9.53 %: of 0 to 100 mg as much is within")
}

// In a pot no amount has more digits than weighing it wants: 2769.23 g that may be off by 50 g are
// 2770 g. No pot falls short by it, and the list has what the card has.
func TestPotsHaveTheDigitsThatTheyWant(t *testing.T) {
	const text = `
drink: "Ample"
serves: 1
scale: 0.1 g
components:
  syrup:
    ingredients: [900 g core:water-pure, 400 g core:sugar-white]
build: [40 g syrup, 100 g core:water-pure]
`
	b := batchOf(t, found(t, "ample", text, assaytest.Core(t), nil), batch.Ask{Serves: 100})
	water, sugar := b.Pots[0].Lines[0], b.Pots[0].Lines[1]
	assert.Equal(t, 100.0, water.Step.Base)
	assert.Equal(t, 2770.0, water.Rounded.Number)
	assert.Zero(t, water.Rounded.Decimals)
	assert.GreaterOrEqual(t, water.Rounded.Number+sugar.Rounded.Number, 4000.0)
	assert.InDelta(t, sugar.Rounded.Number, b.Purchases[1].Weighed, 1e-6)
	assert.InDelta(t, 1, b.Pots[0].Times*1300/4000, 1e-3, "and nothing is made to spare")
}

// A coffee that a data row calls a shot is pulled as the glasses are built: 20 g are a shot of 36 g, two
// glasses of 18 g are one.
func TestShotsArePulled(t *testing.T) {
	for _, of := range []struct {
		grams          string
		count, glasses float64
	}{{"20", 30, 1}, {"18", 15, 2}, {"40", 60, 0.5}} {
		text := "drink: Pulled\nserves: 1\nscale: 0.1 g\ncomponents:\n  shot: {ingredients: [36 g core:espresso]}\nbuild: [" + of.grams + " g shot]\n"
		b := batchOf(t, found(t, "pulled", text, assaytest.Core(t), nil), batch.Ask{Serves: 30})
		require.NotNil(t, b.Pots[0].Shot)
		assert.Equal(t, of.count, b.Pots[0].Shot.Count)
		assert.Equal(t, of.glasses, b.Pots[0].Shot.Glasses)
		assert.True(t, b.Pots[0].Glass)
		assert.Equal(t, of.count, b.Purchases[0].Pieces)
	}
}

// Nuts are bought without their shells; of fruit what nobody eats is bought too.
func TestNutsAreBoughtShelled(t *testing.T) {
	const text = "drink: Nutty\nserves: 1\nbuild: [40 g core:hazelnut, 60 g core:lemon-flesh, 100 g core:water-pure]\n"
	b := batchOf(t, found(t, "nutty", text, assaytest.Core(t), nil), batch.Ask{Serves: 1})
	nut, fruit := b.Purchases[0], b.Purchases[1]
	assert.InDelta(t, 40, nut.Bought, 1e-9)
	assert.Equal(t, "shelled", nut.Form)
	assert.InDelta(t, 40/0.41, nut.Whole, 1e-6, "SR28: refuse 59 %")
	assert.Greater(t, fruit.Bought, 60.0)
	assert.Empty(t, fruit.Form)
}

func TestLessThanAServeIsNoBatch(t *testing.T) {
	r := found(t, "shots", made["shots"], assaytest.Core(t), nil)
	_, err := batch.Make(context.Background(), benchOf(r), batch.Ask{Grams: 0.001})
	assert.ErrorContains(t, err, "nobody makes 0.001 g of a drink of which a serve weighs 116 g")
}

// Rounding leaves no pot short: thirds of 310 g are 103 g each on a scale of 1 g, and a gram is missing.
func TestNoPotFallsShortByRounding(t *testing.T) {
	const text = `
drink: "Thirds"
serves: 1
scale: 1 g
components:
  mix:
    ingredients: [20 g core:water-pure, 20 g core:apple-juice, 20 g core:sugar-white]
build: [10 g mix]
`
	b := batchOf(t, found(t, "thirds", text, assaytest.Core(t), nil), batch.Ask{Serves: 31})
	sum := 0.0
	for _, w := range b.Pots[0].Lines {
		sum += w.Rounded.Number
	}
	assert.GreaterOrEqual(t, sum, 310.0)
	assert.Less(t, sum, 314.0, "and little more is made")
}
