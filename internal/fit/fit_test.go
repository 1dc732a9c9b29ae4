package fit_test

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/recipe"
)

const draws = 200

func benchOf(r *recipe.Recipe) fit.Bench {
	return fit.Bench{
		Central:  assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}),
		Drawn:    assay.Prepare(r, estimate.Ensemble{Seed: 1, N: draws + 1}),
		Drink:    r.Drink,
		Declared: func(string) (bool, error) { return false, nil },
	}
}

func fitted(t testing.TB, text string) *fit.Result {
	t.Helper()
	r := assaytest.Found(t, assaytest.Core(t), text)
	faults := &fail.List{}
	aims := fit.Read(r.Drink, faults)
	require.NoError(t, faults.Err(fail.Wrong))
	res, err := benchOf(r).Fit(context.Background(), aims)
	require.NoError(t, err)
	return res
}

func moved(res *fit.Result) map[string]float64 {
	to := map[string]float64{}
	for _, m := range res.Moves {
		to[m.Of] = m.To
	}
	return to
}

const milks = `
drink: square
serves: 1
foods:
  lean: {name: Lean, per: 100 g, values: {WATER: 96.4 g ± 0 g, FAT: 3.6 g ± 0 g}, source: made up}
  rich: {name: Rich, per: 100 g, values: {WATER: 64 g ± 0 g, FAT: 36 g ± 0 g}, source: made up}
`

// The square of Pearson: of two milks with a and b of fat the shares for c are (c − b) and (a − c).
// 3.6 % and 36.0 % to 9.0 %: 27.0 to 5.4, of 162 g 135 and 27.
func TestThePearsonSquare(t *testing.T) {
	res := fitted(t, milks+`
build: [100 g own:lean, 62 g own:rich]
targets: ["per100g(FAT) >= 9 g", "per100g(FAT) <= 9.0 g", "mass() between 162 g and 162 g"]
vary:
  - {of: "own:lean", from: 10 g, to: 200 g}
  - {of: "own:rich", from: 10 g, to: 200 g}
`)
	assert.True(t, res.Met)
	assert.Equal(t, map[string]float64{"own:lean": 135, "own:rich": 27}, moved(res))
}

// Two syrups of 650 and 300 g of sugar in a kilogram, 40 g together, 20 g of sugar: x of the first
// and 40 − x of the second, 0.65 x + 0.30 (40 − x) = 20 at x = 22.857…; in steps of 0.1 g within
// 0.05 g of sugar.
func TestTwoSweetenersToASugarTarget(t *testing.T) {
	res := fitted(t, `
drink: two syrups
serves: 1
foods:
  rich: {name: Rich, per: 100 g, values: {WATER: 35 g ± 0 g, SUGAR: 65 g ± 0 g, SUCS: 65 g ± 0 g}, source: made up}
  thin: {name: Thin, per: 100 g, values: {WATER: 70 g ± 0 g, SUGAR: 30 g ± 0 g, SUCS: 30 g ± 0 g}, source: made up}
build: [20.0 g own:rich, 20.0 g own:thin]
targets: [serving(SUGAR) between 19.98 g and 20.02 g, mass() between 40 g and 40 g]
vary:
  - {of: "own:rich", from: 0.1 g, to: 40 g}
  - {of: "own:thin", from: 0.1 g, to: 40 g}
`)
	assert.True(t, res.Met)
	assert.True(t, res.Proven)
	to := moved(res)
	assert.InDelta(t, 22.857, to["own:rich"], 0.06) // 0.02 g of sugar are 0.057 g of syrup
	assert.InDelta(t, 40, to["own:rich"]+to["own:thin"], 1e-9)
}

// Citric acid has 64.04 g of equivalents: 200 g of a juice that titrates as 5.0 g/kg needs
// x = 200 × (6 − 5) ÷ (1000 − 6) = 0.2012 g to titrate as 6.0 g/kg, and 0.2 g in steps of 0.1 g.
// The burette's end at pH 8.1 leaves 0.3 % of the third proton.
func TestAJuiceIsBroughtToAnAcidity(t *testing.T) {
	res := fitted(t, `
drink: acid juice
serves: 1
foods:
  juice: {name: Juice, per: 100 g, values: {WATER: 99.5 g ± 0 g, CITAC: 500 mg ± 0 mg, OA: 0.5 g ± 0 g, K: 0 mg ± 0 mg, NA: 0 mg ± 0 mg, CA: 0 mg ± 0 mg, MG: 0 mg ± 0 mg, CLD: 0 mg ± 0 mg, P: 0 mg ± 0 mg, PROCNT: 0 g ± 0 g}, source: made up}
build: [200 g own:juice, 0.01 g core:citric-acid]
targets: [ta() >= 6 g/l, least serving(CITAC)]
vary: [{of: "core:citric-acid", from: 0.01 g, to: 2 g}]
`)
	assert.True(t, res.Met)
	to := moved(res)
	t.Log(to, res.Held)
	assert.InDelta(t, 0.20, to["core:citric-acid"], 0.03)
}

// Fat of 9 g and of no more than 4 g in one glass cannot be; one of them gives by what the other asks.
func TestTargetsInEachOthersWayAreTold(t *testing.T) {
	res := fitted(t, milks+`
glass: 200 ml
build: [100 g own:lean, 62 g own:rich]
targets: [serving(FAT) >= 9 g, serving(FAT) <= 4 g, serving(WATER) >= 20 g]
vary:
  - {of: "own:lean", from: 10 g, to: 100 g}
  - {of: "own:rich", from: 1 g, to: 100 g}
`)
	assert.False(t, res.Met)
	assert.Equal(t, []string{"serving(FAT) >= 9 g", "serving(FAT) <= 4 g"}, res.Together)
	assert.InDelta(t, 5, res.Held[0].Gives, 0.36, "a step of rich milk is 0.36 g of fat")
	assert.InDelta(t, 5, res.Held[1].Gives, 0.36)
}

// What stops the goal is named: the glass, and the condition that binds.
func TestWhatStopsTheGoalIsNamed(t *testing.T) {
	res := fitted(t, milks+`
glass: 150 ml
build: [100 g own:lean, 62 g own:rich]
targets: [most serving(FAT), per100g(FAT) <= 10 g, serving(WATER) >= 1 g]
vary:
  - {of: "own:lean", from: 10 g, to: 200 g}
  - {of: "own:rich", from: 1 g, to: 200 g}
`)
	assert.True(t, res.Met)
	assert.ElementsMatch(t, []string{"per100g(FAT) <= 10 g", "the glass"}, res.StoppedBy)
	assert.LessOrEqual(t, res.After.Volume.Mean, 150.0)
}

// An amount that no run allows is no answer, and nobody is told of it as one.
func TestTheAnswerIsRunAsItIsTold(t *testing.T) {
	const text = `
drink: run again
serves: 2
glass: 90 ml
scale: 1 g
components:
  cordial:
    ingredients: [60 g core:lemon-juice, 60 g core:sugar-white]
    steps: [strain: {collect: 100 g, through: cloth}]
build: [40 g cordial, 100 g core:water-pure]
targets: [serving(SUGAR) <= 8 g, ph() between 2.3 and 2.8, serving(CITAC) >= 0.3 g]
vary:
  - {of: cordial, from: 10 g, to: 60 g}
  - {of: core:water-pure, from: 20 g, to: 160 g}
  - {of: cordial/strain/collect, from: 80 g, to: 105 g}
`
	res := fitted(t, text)
	require.True(t, res.Met)
	r := assaytest.Found(t, assaytest.Core(t), text)
	plan := assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1})
	a, err := plan.Run(context.Background(), res.Amounts(), assay.Want{Chemistry: true})
	require.NoError(t, err)
	assert.LessOrEqual(t, assaytest.Figure(t, a.PerServing, "SUGAR").Mean, 8.0)
	assert.GreaterOrEqual(t, assaytest.Figure(t, a.PerServing, "CITAC").Mean, 300.0)
	assert.InDelta(t, 2.55, a.Chemistry.PH.Mean, 0.25)
	for _, m := range res.Moves {
		assert.InDelta(t, m.To, float64(int(m.To+0.5)), 1e-9, "on the scale")
	}
}

// A reading moves the acidity of this drink away from that at central values without draws. What lies closely
// about it is met as it is written: no amount moves, and it is not told as missed.
func TestAReadingMovesBothSidesOfATarget(t *testing.T) {
	demo := string(assaytest.FileOf(t, "data/demo/garden-tide.yaml"))
	is := fitted(t, demo+"\ntargets: [ta() <= 100 g/l]\n").After.Chemistry.Acidity[0].PerLitre.Mean
	r := assaytest.Found(t, assaytest.Core(t), demo)
	bare, err := benchOf(r).Central.Run(context.Background(), nil, assay.Want{Draws: true, Chemistry: true})
	require.NoError(t, err)
	require.Greater(t, is/bare.Chemistry.Acidity[0].PerLitre.Mean, 1.002, "or else this tries nothing")
	res := fitted(t, demo+fmt.Sprintf("\ntargets: [ta() between %.6f g/l and %.6f g/l]\n", 0.999*is, 1.001*is))
	assert.True(t, res.Met)
	assert.Empty(t, res.Amounts())
}

// Twelve times 0.1 after 14.1 is no 15.299999999999999: an amount is written as a scale shows it.
func TestAmountsAreWrittenWithoutDust(t *testing.T) {
	for k := range 12 {
		least := 14.05 + float64(k)*1.1
		res := fitted(t, fmt.Sprintf("drink: x\nserves: 1\nscale: 0.1 g\nbuild: [10.1 g core:sugar-white, 50 g core:water-pure]\ntargets: [serving(SUGAR) >= %v g]\nvary: [{of: core:sugar-white, from: 10.1 g, to: 40 g}]\n", least))
		text := res.Amounts()["build/core:sugar-white"].String()
		assert.Regexp(t, `^\d\d(\.\d)? g$`, text)
	}
}
