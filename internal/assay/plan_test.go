package assay_test

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/recipe"
	"sipsum/internal/unit"
)

// planOf prepares the text of a drink file.
func planOf(t testing.TB, lib assaytest.Library, text string, draws int) *assay.Plan {
	t.Helper()
	return prepared(assaytest.Found(t, lib, text), draws)
}

func prepared(r *recipe.Recipe, draws int) *assay.Plan {
	return assay.Prepare(r, estimate.Ensemble{Seed: 1, N: draws + 1})
}

func amountOf(t testing.TB, text string) unit.Amount {
	t.Helper()
	parsed, rest, err := unit.ParseAmount(text)
	require.NoError(t, err)
	require.Empty(t, rest)
	return parsed
}

// The same plan run with amount after amount gives what a plan of its own gives.
func TestARunWithOtherAmountsIsAFreshRun(t *testing.T) {
	lib := assaytest.Core(t)
	text := string(assaytest.FileOf(t, "data/demo/garden-tide.yaml"))
	want := assay.Want{Whole: true, Intervals: true, Chemistry: true}
	const draws = 60
	kept := planOf(t, lib, text, draws)
	ctx := context.Background()
	written, err := kept.Run(ctx, nil, want)
	require.NoError(t, err)
	amounts := kept.Written()
	require.Len(t, amounts, 13)
	for _, path := range slices.Sorted(maps.Keys(amounts)) {
		for _, grams := range []string{"31 g ± 1 g", "47.5 g"} {
			other := amount.Amounts{path: amountOf(t, grams)}
			again, err := kept.Run(ctx, other, want)
			fresh, freshErr := planOf(t, lib, text, draws).Run(ctx, other, want)
			if freshErr != nil {
				require.Error(t, err, "%s = %s", path, grams)
				continue
			}
			require.NoError(t, err)
			same(t, fresh, again, path+" = "+grams)
		}
	}
	back, err := kept.Run(ctx, nil, want)
	require.NoError(t, err)
	same(t, written, back, "written")
}

// A run with another amount is what the file gives that has that amount written.
func TestARunWithOtherAmountsIsTheDrinkSoWritten(t *testing.T) {
	lib := assaytest.Core(t)
	text := string(assaytest.FileOf(t, "data/demo/garden-tide.yaml"))
	want := assay.Want{Whole: true, Intervals: true, Chemistry: true}
	const draws = 40
	plan := planOf(t, lib, text, draws)
	for _, c := range []struct{ path, written, other string }{
		{"passion syrup/core:passion-fruit-juice-purple", "150 g", "171 g ± 4 g"},
		{"passion syrup/core:sugar-white", "90 g", "82.5 g"},
		{"build/mint whey", "140 g", "155 g"},
	} {
		rewritten := strings.Replace(text, c.written+" "+c.path[strings.Index(c.path, "/")+1:], c.other+" "+c.path[strings.Index(c.path, "/")+1:], 1)
		require.NotEqual(t, text, rewritten)
		fresh, err := planOf(t, lib, rewritten, draws).Run(context.Background(), nil, want)
		require.NoError(t, err)
		again, err := plan.Run(context.Background(), amount.Amounts{c.path: amountOf(t, c.other)}, want)
		require.NoError(t, err)
		same(t, fresh, again, c.path)
	}
}

// same holds two assays to be the same in all that is printed of them, and in every draw.
func same(t *testing.T, a, b *assay.Assay, what string) {
	t.Helper()
	printed := func(a *assay.Assay) []any {
		return []any{
			a.Mass, a.Volume, a.Density, a.PerServing, a.Per100g, a.Per100ml, a.Components, a.Alone, a.Chemistry, a.Curdling, a.TableEnergy,
			a.Notes, a.Readings, a.Garnish, cells(a), a.Seed, a.Draws,
		}
	}
	require.Empty(t, assaytest.Differ(printed(a), printed(b)), what)
}

// What a component or the drink weighs is what went in and came, less what went: of every
// demo, step by step, and what is used of it is no more than there is.
func TestYieldsClose(t *testing.T) {
	lib := assaytest.Core(t)
	for _, demo := range []string{"garden-tide", "harbour-veil", "slow-lantern"} {
		a := assaytest.Assay(t, lib, string(assaytest.FileOf(t, "data/demo/"+demo+".yaml")), 20)
		require.NotEmpty(t, a.Yields)
		for _, y := range a.Yields {
			mass := y.In
			for _, s := range y.Steps {
				assert.InDelta(t, mass, s.In, 1e-9, "%s: %s: %s begins with what the step before left", demo, y.Component, s.Path)
				assert.InDelta(t, s.In+s.Added-s.Lost, s.Out, 1e-9, "%s: %s", demo, s.Path)
				assert.GreaterOrEqual(t, min(s.Added, s.Lost), 0.0, "%s: %s", demo, s.Path)
				mass = s.Out
			}
			assert.InDelta(t, mass, y.Out, 1e-9, "%s: %s", demo, y.Component)
			assert.LessOrEqual(t, y.Used, y.Out*(1+1e-9), "%s: %s", demo, y.Component)
		}
		drink := a.Yields[len(a.Yields)-1]
		assert.Empty(t, drink.Component)
		assert.InDelta(t, drink.Out, a.Mass.Mean*float64(a.Drink.Serves), 1e-9, "%s: no garnish is eaten", demo)
	}
}

// A syrup that is boiled and strained: what each step took is what the file says.
func TestYieldsSayWhatEachStepTook(t *testing.T) {
	const text = `
drink: "Weighed"
serves: 2
components:
  syrup:
    ingredients: [100 g core:sugar-white, 200 g core:water-pure]
    steps: [reduce: {to: 250 g}, strain: {collect: 240 g, through: cloth}]
build: [60 g syrup]
finish: [chill: {melt: 15 g}]
`
	y := assaytest.Assay(t, assaytest.Core(t), text, 20).Yields
	require.Len(t, y, 2)
	assert.InDelta(t, 300, y[0].In, 1e-9)
	assert.InDelta(t, 50, y[0].Steps[0].Lost, 1e-9)
	assert.InDelta(t, 10, y[0].Steps[1].Lost, 1e-9)
	assert.InDelta(t, 240, y[0].Out, 1e-9)
	assert.InDelta(t, 60, y[0].Used, 1e-9)
	assert.Equal(t, "chill", y[1].Steps[0].Kind)
	assert.InDelta(t, 15, y[1].Steps[0].Added, 1e-9)
	assert.InDelta(t, 75, y[1].Out, 1e-9)
}

// Draws come along when they are asked for, each a figure of its own, and the parts of a
// total add up to it in each.
func TestFiguresKeepTheirDraws(t *testing.T) {
	lib := assaytest.Core(t)
	text := string(assaytest.FileOf(t, "data/demo/garden-tide.yaml"))
	want := assay.Want{Whole: true, Intervals: true, Chemistry: true, Draws: true}
	a, err := planOf(t, lib, text, 300).Run(context.Background(), nil, want)
	require.NoError(t, err)
	sugar := assaytest.Figure(t, a.PerServing, "SUGAR")
	require.Len(t, sugar.Draws, 300)
	sum := make([]float64, 300)
	for _, c := range constituent.Sums().Leaves("SUGAR") {
		if f, ok := a.PerServing.Find(c.ID); ok {
			for d, x := range f.Draws {
				sum[d] += x / c.PerGram
			}
		}
	}
	for d, x := range sugar.Draws {
		require.InDelta(t, x, sum[d], 1e-9, "draw %d", d)
	}
	assert.InDelta(t, sugar.SD, stat.StdDev(sugar.Draws, nil), 1e-12)
	assert.Len(t, a.Chemistry.PHMeter.Draws, 200, "equilibria are solved for the first 200")
	want.Draws = false
	a, err = planOf(t, lib, text, 300).Run(context.Background(), nil, want)
	require.NoError(t, err)
	assert.Empty(t, assaytest.Figure(t, a.PerServing, "SUGAR").Draws)
}

// Without intervals a figure is its mean; nothing else changes.
func TestWithoutIntervalsTheMeansStay(t *testing.T) {
	lib := assaytest.Core(t)
	plan := planOf(t, lib, string(assaytest.FileOf(t, "data/demo/garden-tide.yaml")), 50)
	ctx := context.Background()
	whole, err := plan.Run(ctx, nil, assay.Want{Whole: true, Intervals: true})
	require.NoError(t, err)
	bare, err := plan.Run(ctx, nil, assay.Want{Whole: true})
	require.NoError(t, err)
	require.Len(t, bare.PerServing, len(whole.PerServing))
	for i, f := range bare.PerServing {
		assert.Equal(t, whole.PerServing[i].Mean, f.Mean)
		assert.Equal(t, f.Mean, f.High)
		assert.Equal(t, whole.PerServing[i].State, f.State)
	}
	assert.Nil(t, bare.Chemistry)
}

// Parts are known by the lines that pour them, whatever they are called.
func TestPartsNameTheirLines(t *testing.T) {
	const text = `
drink: "Lines"
serves: 1
components:
  syrup: {ingredients: [50 g core:sugar-white, 50 g core:water-pure]}
build: [20 g syrup, 10 g core:sugar-white, 5 g syrup]
garnish: [{food: core:sugar-white, amount: 1 g, eaten: true}, 2 g core:spearmint]
`
	a := assaytest.Assay(t, assaytest.Core(t), text, 20)
	require.Len(t, a.Components, 2)
	assert.Equal(t, []string{"build/syrup", "build/syrup~2"}, a.Components[0].Lines)
	assert.Equal(t, []string{"build/core:sugar-white", "garnish/core:sugar-white"}, a.Components[1].Lines)
}

// Who asks only in a second run which reading to take next gets what a fresh plan says: what was
// kept of the first holds no samples.
func TestAReadingToTakeIsFoundInASecondRun(t *testing.T) {
	found := assaytest.Found(t, assaytest.Core(t), fmt.Sprintf(assaytest.WholeDrink, 2))
	ens, want := estimate.Ensemble{Seed: 1, N: 51}, assay.Want{Figures: []constituent.ID{constituent.Sugar, "CITAC"}, Next: true}
	fresh, err := assay.Prepare(found, ens).Run(context.Background(), nil, want)
	require.NoError(t, err)
	require.NotEmpty(t, fresh.Suggestions)
	plan := assay.Prepare(found, ens)
	_, err = plan.Run(context.Background(), nil, assay.Want{})
	require.NoError(t, err)
	again, err := plan.Run(context.Background(), nil, want)
	require.NoError(t, err)
	assert.Empty(t, assaytest.Differ(fresh.Suggestions, again.Suggestions))
}

// A plan that was asked for no chemistry, and then for it, gives what a plan gives that was asked at
// once: its notes, and doses by pH, which want to know it either way.
func TestChemistryAskedForLaterIsTheSame(t *testing.T) {
	lib := assaytest.Core(t)
	ctx := context.Background()
	for _, text := range []string{
		string(assaytest.FileOf(t, "data/demo/garden-tide.yaml")),
		"drink: x\nserves: 1\ncomponents:\n  sour:\n    ingredients:\n      - 100 g core:orange-juice\n      - 50 g core:passion-fruit-juice-purple\n    steps:\n      - adjust: {ph: 2.8, with: core:citric-acid}\nbuild: [90 g sour]\n",
	} {
		plan := planOf(t, lib, text, 60)
		_, err := plan.Run(ctx, nil, assay.Want{Intervals: true})
		require.NoError(t, err)
		want := assay.Want{Whole: true, Intervals: true, Chemistry: true}
		later, err := plan.Run(ctx, nil, want)
		require.NoError(t, err)
		fresh, err := planOf(t, lib, text, 60).Run(ctx, nil, want)
		require.NoError(t, err)
		same(t, fresh, later, "asked later")
		assert.Equal(t, fresh.Notes, later.Notes)
	}
}
