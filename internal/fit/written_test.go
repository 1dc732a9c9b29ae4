package fit_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
)

// asked are figures that a random target asks of a drink.
var asked = []string{"serving(SUGAR)", "serving(CAFFN)", "ph()", "ta()", "per100ml(SUGAR)", "volume()", "serving(ENERC)", "brix()"}

// The answer to targets drawn at random, written into the file, read again and calculated, gives the
// figures that were told, and meets what was told to be met.
func TestTheAnswerIsWhatItsFileGives(t *testing.T) {
	core := assaytest.Core(t)
	r := rand.New(rand.NewPCG(16, 16))
	met := 0
	for _, file := range []string{"data/demo/garden-tide.yaml", "data/demo/slow-lantern.yaml", "data/demo/harbour-veil.yaml", "testdata/drinks/pear-weir.drink.yaml"} {
		text := string(assaytest.FileOf(t, file))
		for range 5 {
			found := assaytest.Found(t, core, text)
			b := benchOf(found)
			b.Drawn = assay.Prepare(found, estimate.Ensemble{Seed: 1, N: 11})
			aims := drawn(t, r, b)
			if len(aims) == 0 {
				continue
			}
			res, err := b.Fit(context.Background(), aims)
			require.NoError(t, err, file)
			next, err := amount.Rewrite(found.Drink, []byte(text), b.Central.Written(), res.Amounts())
			require.NoError(t, err, file)
			again := assaytest.Found(t, core, string(next))
			a, err := assay.Prepare(again, estimate.Ensemble{Seed: 1, N: 11}).Run(context.Background(), nil, res.After.Want)
			require.NoError(t, err, file)
			same(t, file, a, res.After)
			g := claims.NewGlass(a, b.Declared)
			for i, h := range res.Held[:len(aims)] {
				o, err := aims[i].Whole().Evaluate(g, nil)
				require.NoError(t, err)
				assert.Equal(t, h.Met, o.Central(), "%s: %s", file, h.Text)
			}
			if res.Met {
				met++
			}
		}
	}
	assert.Greater(t, met, 4, "some are met")
}

// drawn draws two targets: figures of the drink are held to up to a fifth less, or more.
func drawn(t *testing.T, r *rand.Rand, b fit.Bench) []fit.Aim {
	a, err := b.Central.Run(context.Background(), nil, assay.Want{Draws: true, Chemistry: true})
	require.NoError(t, err)
	g := claims.NewGlass(a, b.Declared)
	var aims []fit.Aim
	for range 2 {
		of := asked[r.IntN(len(asked))]
		goal, err := claim.ParseTarget("least "+of, fail.Place{})
		require.NoError(t, err)
		low, high, err := goal.Goal.Figure(g)
		require.NoError(t, err)
		if len(low) == 0 || math.IsInf(high[0], 0) || low[0] == 0 {
			continue
		}
		name, base := goal.Goal.Unit()
		text := fmt.Sprintf("%s <= %.3f %s", of, high[0]/base*(1-r.Float64()/5), name)
		if r.IntN(2) == 0 {
			text = fmt.Sprintf("%s >= %.3f %s", of, low[0]/base*(1+r.Float64()/5), name)
		}
		target, err := claim.ParseTarget(text, fail.Place{})
		require.NoError(t, err, text)
		aims = append(aims, fit.Aim{Target: target})
	}
	return aims
}

// same holds two runs to one another.
func same(t *testing.T, file string, a, b *assay.Assay) {
	t.Helper()
	const dust = 1e-9
	assert.InEpsilon(t, b.Mass.Mean, a.Mass.Mean, dust, file)
	for _, f := range b.PerServing {
		got, ok := a.PerServing.Find(f.Constituent.ID)
		require.True(t, ok, file)
		if !f.Unknown {
			assert.InDelta(t, f.Mean, got.Mean, dust*math.Max(1, f.Mean), "%s: %s", file, f.Constituent.ID)
		}
	}
	assert.InDelta(t, b.Chemistry.PHMeter.Mean, a.Chemistry.PHMeter.Mean, dust, file)
}

// A target that nobody can decide leaves the others to be met, and says what would settle it.
func TestWhatNobodyKnowsLeavesTheOthersToBeMet(t *testing.T) {
	res := fitted(t, `
drink: dark
serves: 1
scale: 1 g
foods:
  dark: {name: Dark, per: 100 g, values: {WATER: 60 g ± 0 g, SUCS: 40 g ± 0 g, SUGAR: 40 g ± 0 g}, source: made up}
build: [40 g own:dark, 40 g core:water-pure]
targets: [ph() < 3, serving(SUCS) <= 12 g]
vary: [{of: "own:dark", from: 10 g, to: 60 g}]
`)
	assert.False(t, res.Met)
	assert.False(t, res.Held[0].Met)
	require.NotNil(t, res.Held[0].Settle)
	assert.Contains(t, res.Held[0].Settle.What, "withheld")
	assert.True(t, res.Held[1].Met)
	assert.Equal(t, map[string]float64{"own:dark": 30}, moved(res))
}

// What nobody knows and nothing bounds is no number at any amount: the others are met all the same.
func TestWhatNothingBoundsLeavesTheOthersToBeMet(t *testing.T) {
	res := fitted(t, `
drink: open
serves: 1
scale: 1 g
foods:
  dark: {name: Dark, per: 100 g, values: {WATER: 50 g ± 0 g, SUCS: 40 g ± 0 g, SUGAR: 40 g ± 0 g}, source: made up}
build: [40 g own:dark, 40 g core:water-pure]
targets: [serving(CAFFN) <= 1 mg, serving(SUCS) <= 12 g]
vary: [{of: "own:dark", from: 10 g, to: 60 g}]
`)
	assert.False(t, res.Met)
	assert.False(t, res.Held[0].Met, "unknown is not zero")
	require.NotNil(t, res.Held[0].Settle)
	assert.Equal(t, "caffeine of dark", res.Held[0].Settle.What)
	assert.True(t, res.Held[1].Met)
	assert.Equal(t, map[string]float64{"own:dark": 30}, moved(res))
}

// A reading moves central values by what the draws say; a target is met at those that the file gives.
func TestTargetsAreMetAtTheValuesOfTheDraws(t *testing.T) {
	found := assaytest.Found(t, assaytest.Core(t), string(assaytest.FileOf(t, "data/demo/garden-tide.yaml")))
	for _, limit := range []string{"8.9", "8.7", "8.5", "8.3"} {
		target, err := claim.ParseTarget("per100ml(SUGAR) <= "+limit+" g", fail.Place{})
		require.NoError(t, err)
		b := benchOf(found)
		b.Drawn = assay.Prepare(found, estimate.Ensemble{Seed: 1, N: 11})
		res, err := b.Fit(context.Background(), []fit.Aim{{Target: target}})
		require.NoError(t, err)
		assert.True(t, res.Met, limit)
	}
}

// A step that cannot be done at some amounts bounds the search and does not end it: 140 g cannot be
// collected of 120 g.
func TestAmountsThatCannotBeMadeAreNoAnswer(t *testing.T) {
	res := fitted(t, `
drink: pressed
serves: 1
scale: 1 g
components:
  cordial:
    ingredients: [60 g core:lemon-juice, 60 g core:sugar-white]
    steps: [strain: {collect: 100 g, through: cloth}]
build: [40 g cordial, 60 g core:water-pure, 20 g core:orange-juice]
targets: [most serving(CITAC), serving(SUGAR) <= 14 g, ph() >= 2.5]
vary:
  - {of: cordial, from: 10 g, to: 60 g}
  - {of: core:orange-juice, from: 10 g, to: 60 g}
  - {of: cordial/core:sugar-white, from: 10 g, to: 90 g}
  - {of: cordial/strain/collect, from: 90 g, to: 140 g}
`)
	assert.True(t, res.Met)
	assert.Less(t, res.Runs, 3000)
}

// The demand of eight amounts and two hundred draws.
func BenchmarkFitOfEightAmounts(b *testing.B) {
	text := string(assaytest.FileOf(b, "testdata/drinks/pear-weir.drink.yaml"))
	found := assaytest.Found(b, assaytest.Core(b), text)
	aims := fit.Read(found.Drink, &fail.List{})
	for b.Loop() {
		_, err := benchOf(found).Fit(context.Background(), aims)
		require.NoError(b, err)
	}
}

// An amount that lies between two steps stays as it is written where it need not move: 12 g by a
// scale of 5 g, the middle of a range.
func TestWhatNeedNotMoveStaysAsItIsWritten(t *testing.T) {
	res := fitted(t, `
drink: still
serves: 1
scale: 5 g
build: [12 g core:lemon-juice, 50 g core:water-pure, 36-41 g core:orange-juice]
targets: [serving(SUGAR) <= 20 g, mass() between 100.49 g and 100.51 g]
`)
	assert.True(t, res.Met)
	assert.Empty(t, res.Amounts())
	assert.InDelta(t, res.Before.Mass.Mean, res.After.Mass.Mean, 1e-12)
}
