package batch_test

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/batch"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/recipe"
)

// homely is the home version of a drink, with the drink itself.
func homely(t *testing.T, text string, serves int) (*batch.Home, batch.Bench) {
	t.Helper()
	return kitchenOf(t, text, serves)
}

func kitchenOf(t testing.TB, text string, serves int) (*batch.Home, batch.Bench) {
	t.Helper()
	lib := assaytest.Core(t)
	bench := func(r *recipe.Recipe) batch.Bench {
		return batch.Bench{
			Recipe: r, Declared: func(string) (bool, error) { return false, nil },
			Central: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}),
			Hands:   assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 11, Only: amount.Stream}),
		}
	}
	ctx := context.Background()
	first := bench(assaytest.Found(t, lib, text))
	h, err := batch.MakeHome(ctx, batch.Kitchen{
		Bench: first, Text: []byte(text),
		Read: func(ctx context.Context, text []byte) (batch.Bench, error) {
			d, faults := drink.Parse(first.Recipe.Drink.File, text, nil)
			r, err := recipe.Find(ctx, d, faults, lib)
			if err != nil {
				return batch.Bench{}, err
			}
			return bench(r), nil
		},
		Fit: func(ctx context.Context, b batch.Bench) (amount.Amounts, bool, error) {
			res, err := fit.Bench{Central: b.Central, Drawn: b.Hands, Drink: b.Recipe.Drink, Declared: b.Declared}.Fit(ctx, fit.Read(b.Recipe.Drink, &fail.List{}))
			if err != nil {
				return nil, false, err
			}
			return res.Amounts(), res.Met, nil
		},
	}, serves)
	require.NoError(t, err)
	return h, first
}

func central(t *testing.T, b batch.Bench) *assay.Assay {
	t.Helper()
	a, err := b.Central.Run(context.Background(), nil, assay.Want{Chemistry: true})
	require.NoError(t, err)
	return a
}

func spooned(t *testing.T, h *batch.Home, name string) batch.Spooned {
	t.Helper()
	for _, l := range h.Lines {
		if l.Name == name {
			return l
		}
	}
	require.Fail(t, "no line "+name)
	return batch.Spooned{}
}

// A US teaspoon of sugar weighs 4.2 g, a tablespoon 12.5 g: USDA SR28, NDB 19335 (a cup of 200 g). All that
// is sweet comes of it, and a spoon is off by more than the 4.2 % that are noticed: 1.645 times 5.75 %, with
// half of a quarter of a teaspoon more.
func TestASpoonOfSugarIsAsHeavyAsItsTableSays(t *testing.T) {
	h, _ := homely(t, "drink: x\nserves: 1\nscale: 0.1 g\nbuild: [200 g core:water-tap, 12.5 g core:sugar-white]\n", 1)
	sugar := spooned(t, h, "Sugar, white")
	assert.Equal(t, "1 tbsp", sugar.To.String())
	assert.InDelta(t, 200.0/16, sugar.Grams, 0.01)
	assert.Equal(t, "sweet", sugar.Weigh)
	assert.Equal(t, "12.5 g", sugar.Scale.String())
	assert.InDelta(t, 1.645*0.0575+0.125/3, sugar.Off, 0.01, "of what little its own volume thins")
	assert.Contains(t, string(h.Text), "12.5 g core:sugar-white", "the file weighs it")
}

// What a spoon is off by decides, not how luckily its amount was rounded: with half of the sweetness in each
// of two lines, neither leaves 4.2 % by rounding, but both do by filling, and one of a tenth does not.
func TestALineIsJudgedByItsWorst(t *testing.T) {
	h, _ := homely(t, "drink: x\nserves: 1\nscale: 0.1 g\nbuild: [200 g core:water-tap, 12.5 g core:sugar-white, 17.7 g core:maple-syrup, 1.05 g core:sugar-raw-cane]\n", 1)
	sugar, syrup, raw := spooned(t, h, "Sugar, white"), spooned(t, h, "Maple syrup"), spooned(t, h, h.Lines[3].Name)
	assert.InEpsilon(t, sugar.Exact, 12.5, 1e-9)
	assert.Equal(t, "sweet", sugar.Weigh)
	assert.Equal(t, "sweet", syrup.Weigh)
	assert.Empty(t, raw.Weigh)
}

// Leaves are counted or spooned as tables weigh them: two leaves of basil weigh 1 g, two tablespoons of
// spearmint 11.4 g (SR28 WEIGHT 02044, 02065); of coffee grounds no table of these says anything.
func TestLeavesAreCounted(t *testing.T) {
	h, _ := homely(t, "drink: x\nserves: 1\nscale: 0.1 g\ncomponents:\n  tea:\n    ingredients: [200 g core:water-tap, 4 g core:basil, 11.4 g core:spearmint, 10 g core:coffee-roasted-arabica]\n    steps:\n      - strain: {collect: 180 g, through: paper}\nbuild: [170 g tea]\ngarnish: [0.9 g core:basil]\n", 1)
	basil, mint, coffee := h.Lines[1], h.Lines[2], h.Lines[3]
	assert.Equal(t, 8.0, basil.Count)
	assert.Equal(t, "leaves", basil.Of)
	assert.InDelta(t, 11.4, mint.Grams, 0.01)
	assert.Equal(t, "tbsp", mint.To.Measure.Name)
	assert.Equal(t, 2.0, mint.To.Number)
	assert.Contains(t, coffee.Weigh, "no table says")
	top := h.Lines[len(h.Lines)-1]
	assert.True(t, top.Garnish)
	assert.Equal(t, 2.0, top.Count, "no garnish is weighed")
}

// What is left in a pot is told as a volume by the pot's density, and written back into the drink: three
// quarters of a cup are 177.4 ml.
func TestAStepHasAVolume(t *testing.T) {
	h, was := homely(t, "drink: x\nserves: 1\nscale: 1 g\ncomponents:\n  syrup:\n    ingredients: [150 g core:orange-juice, 100 g core:sugar-white]\n    steps:\n      - reduce: {to: 220 g}\nbuild: [10 g syrup, 200 g core:water-tap]\nfinish:\n  - chill: {melt: 30 g}\n", 1)
	a, err := was.Central.Run(context.Background(), nil, assay.Want{Volumes: true})
	require.NoError(t, err)
	y := a.Yields[0]
	require.InDelta(t, 220, y.Out, 1e-9)
	assert.InDelta(t, y.Volume, y.Steps[0].Volume, 1e-9)
	assert.InDelta(t, 1.23, y.Out/y.Volume, 0.03, "about 54 °Bx: 1.25 g/ml of sucrose (ICUMSA)")
	i := slices.IndexFunc(h.Lines, func(l batch.Spooned) bool { return l.Step && l.Name == "to" })
	require.GreaterOrEqual(t, i, 0)
	left := h.Lines[i]
	assert.InDelta(t, y.Volume, left.To.Base(), 0.05*y.Volume)
	assert.Equal(t, "sweet", left.Weigh, "a mark is hit to 5.75 %: what is boiled down is sweeter by as much")
	i = slices.IndexFunc(h.Lines, func(l batch.Spooned) bool { return l.Step && l.Name == "melt" })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, "2 tbsp", h.Lines[i].To.String())
	assert.Empty(t, h.Lines[i].Weigh)
	assert.Regexp(t, `melt: 29\.5 g ± [0-9.]+ g sd`, string(h.Text))
}

// Two acids in one list become one juice, and the sugar grows where its water thins it.
func TestTwoAcidsAreOneJuice(t *testing.T) {
	for _, list := range []string{
		"ingredients: [300 g core:apple-juice, 150 g core:sugar-white, 2.4 g core:citric-acid, 1.2 g core:malic-acid]",
		"ingredients:\n      - 300 g core:apple-juice\n      - 150 g core:sugar-white\n      - 2.4 g core:citric-acid\n      - 1.2 g core:malic-acid\n",
	} {
		h, was := homely(t, "drink: x\nserves: 1\nscale: 0.1 g\ncomponents:\n  cordial:\n    "+list+"\nbuild: [40 g cordial, 100 g core:water-tap]\n", 1)
		assert.Equal(t, 1, strings.Count(string(h.Text), "core:lemon-juice"), "%s", h.Text)
		require.Len(t, h.Stands, 2)
		assert.True(t, h.Stands[0].Fitted, h.Stands[0].Why)
		a, b := central(t, was), central(t, h.Bench)
		ta := func(a *assay.Assay) float64 { return a.Chemistry.Acidity[0].PerLitre.Mean }
		assert.InEpsilon(t, ta(a), ta(b), 0.07)
	}
}

// At equal titratable acidity lemon juice stands for citric acid by what it holds of acids: SR28 and
// the handbooks give 5 to 7 g in 100 g of it, so that 1 g wants 14 to 20 g.
func TestLemonJuiceStandsForCitricAcid(t *testing.T) {
	h, was := homely(t, "drink: x\nserves: 1\nscale: 0.1 g\nbuild: [200 g core:water-tap, 20 g core:sugar-white, 2 g core:citric-acid]\n", 1)
	require.Len(t, h.Stands, 1)
	assert.True(t, h.Stands[0].Fitted, h.Stands[0].Why)
	lemon := spooned(t, h, "Lemon juice, fresh")
	assert.InDelta(t, 17, lemon.Exact/2, 3)
	a, b := central(t, was), central(t, h.Bench)
	ta := func(a *assay.Assay) float64 { return a.Chemistry.Acidity[0].PerLitre.Mean * a.Volume.Mean }
	assert.InEpsilon(t, ta(a), ta(b), 0.12, "the spoon rounds what was fitted")
}

// A pinch of salt that no spoon measures comes out of a solution: so much salt reaches the glass.
func TestAPowderTooSmallForASpoonIsDissolved(t *testing.T) {
	h, was := homely(t, "drink: x\nserves: 1\nscale: 0.1 g\nbuild: [200 g core:water-tap, 20 g core:sugar-white, 0.3 g core:salt]\n", 1)
	require.Len(t, h.Stands, 1)
	assert.Equal(t, "1 tsp", h.Stands[0].Spoon)
	sodium := func(b batch.Bench) float64 {
		f, ok := central(t, b).PerServing.Find("NA")
		require.True(t, ok)
		return f.Mean
	}
	assert.InEpsilon(t, sodium(was), sodium(h.Bench), 0.15)
}

// Bought gas: the siphon goes, sparkling water comes in the place of the pot's own.
func TestASiphonBecomesBoughtWater(t *testing.T) {
	const text = "drink: x\nserves: 1\ncomponents:\n  soda:\n    ingredients: [300 g core:water-tap]\n    steps:\n      - carbonate: {bottle: 500 ml, charge: 8 g, at: 4 °C}\nbuild:\n  - 30 g core:apple-juice\n  - 120 g soda\n"
	h, _ := homely(t, text, 1)
	require.Len(t, h.Stands, 1)
	assert.Equal(t, "core:water-sparkling-low", h.Stands[0].To)
	assert.NotContains(t, string(h.Text), "carbonate")
	assert.Contains(t, string(h.Text), "core:water-sparkling-low")
}

// Whatever acid of a bar it was, juice or vinegar stands for it, its powder is gone, the glass is as sour, each
// line can be measured or says why not, and the file reads back to the same figures.
func TestEachAcidOfABarBecomesOneOfAKitchen(t *testing.T) {
	for _, acid := range []string{"citric", "malic", "tartaric", "phosphoric", "lactic", "acetic", "succinic", "fumaric", "gluconic"} {
		t.Run(acid, func(t *testing.T) {
			text := "drink: x\nserves: 2\nscale: 0.1 g\ncomponents:\n  cordial:\n    ingredients: [300 g core:water-tap, 200 g core:sugar-white, 4 g core:" + acid +
				"-acid]\n    keeps: 14 days at 4 °C\nbuild: [60 g cordial, 200 g core:water-tap]\ngarnish: [{food: \"core:basil\", amount: 1 g, eaten: true}]\n"
			h, was := homely(t, text, 4)
			require.Len(t, h.Stands, 1)
			assert.True(t, h.Stands[0].Fitted, h.Stands[0].Why)
			assert.NotContains(t, string(h.Text), acid+"-acid")
			assert.Contains(t, string(h.Text), "amount: 2.00 g", "the garnish of four")
			ta := func(b batch.Bench) float64 { return central(t, b).Chemistry.Acidity[0].PerLitre.Mean }
			assert.InEpsilon(t, ta(was), ta(h.Bench), 0.0953, "sour")
			assert.NotContains(t, h.Left, "sour")
			for _, l := range h.Lines {
				assert.True(t, l.Weigh != "" || l.Count > 0 || l.To.Measure.Spread > 0, "%s", l.Path)
				assert.False(t, l.Weigh != "" && l.Scale.Number == 0, "%s: how much", l.Path)
			}
			again := assaytest.Found(t, assaytest.Core(t), string(h.Text))
			same(t, figures(t, h.Recipe), figures(t, again), 1e-9)
			assert.InDelta(t, central(t, h.Bench).Volume.Mean, figures(t, again).Volume.Mean, 1e-9)
		})
	}
}

// Mineral water holds bicarbonate, which takes up acid: the juice is as much as makes up for that too, so
// that the glass is as sour as the bar's, spoons aside.
func TestTheJuiceMakesUpForTheBoughtWater(t *testing.T) {
	const text = "drink: x\nserves: 1\nscale: 0.1 g\ncomponents:\n  soda:\n    ingredients: [300 g core:water-tap]\n    steps:\n      - carbonate: {bottle: 500 ml, charge: 8 g, at: 4 °C, left: 4 g/l}\nbuild:\n  - 12 g core:sugar-white\n  - 0.25 g core:citric-acid\n  - 200 g soda\n"
	h, was := homely(t, text, 1)
	ta := func(b batch.Bench) float64 { return central(t, b).Chemistry.Acidity[0].PerLitre.Mean }
	assert.InEpsilon(t, ta(was), ta(h.Bench), 0.06)
}

// What leaves the interval is told as moved, what stays is not, whichever way it went.
func TestWhatMovedIsTold(t *testing.T) {
	plan := func(text string) *assay.Assay {
		r := assaytest.Found(t, assaytest.Core(t), text)
		a, err := assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 101}).Run(context.Background(), nil, assay.Want{Intervals: true, Chemistry: true})
		require.NoError(t, err)
		return a
	}
	of := func(sugar string) *assay.Assay {
		return plan("drink: x\nserves: 1\nbuild: [200 g core:water-tap, " + sugar + " g core:sugar-white, 30 g core:apple-juice]\n")
	}
	a := of("20")
	for _, sugar := range []string{"20", "20.1", "10", "40"} {
		b := of(sugar)
		for _, x := range batch.Shifts(a, b) {
			if x.Figure == nil || x.Figure.ID != "SUGAR" {
				continue
			}
			inside := x.Home.Mean >= x.Before.Low && x.Home.Mean <= x.Before.High
			assert.Equal(t, !inside, x.Moved, sugar)
			assert.Equal(t, sugar == "10" || sugar == "40", x.Moved, sugar)
		}
	}
}

// The text of the home version is the drink that was worked out, figure by figure, and a reading or
// an acid that left it is in it no more. Nothing that moved is missing from what is told.
func TestTheHomeVersionOfEveryDemo(t *testing.T) {
	for _, name := range []string{"garden-tide", "harbour-veil", "slow-lantern"} {
		t.Run(name, func(t *testing.T) {
			text, err := data.FS.ReadFile("demo/" + name + ".yaml")
			require.NoError(t, err)
			h, was := homely(t, string(text), 2)
			again := assaytest.Found(t, assaytest.Core(t), string(h.Text))
			require.Equal(t, 2, again.Drink.Serves)
			run := func(r *recipe.Recipe) *assay.Assay {
				a, err := assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 51}).Run(context.Background(), nil, assay.Want{Intervals: true, Chemistry: true})
				require.NoError(t, err)
				return a
			}
			worked, written, before := run(h.Recipe), run(again), run(was.Recipe)
			for _, f := range worked.PerServing {
				g, ok := written.PerServing.Find(f.Constituent.ID)
				require.True(t, ok)
				if !f.Unknown {
					assert.InDelta(t, f.Mean, g.Mean, 1e-9*math.Max(1, math.Abs(f.Mean)), f.Constituent.ID)
				}
			}
			for _, l := range h.Lines { // a spoon, a weight with its reason, or what was counted
				assert.True(t, l.Weigh != "" || l.Of != "" || l.To.Measure.Spread > 0, l.Path)
			}
			told := map[constituent.ID]batch.Shift{}
			for _, x := range batch.Shifts(before, written) {
				if x.Figure != nil {
					told[x.Figure.ID] = x
				}
			}
			for _, a := range before.PerServing { // of energy kilojoules are told
				id := a.Constituent.ID
				b, _ := written.PerServing.Find(id)
				if a.Unknown == b.Unknown && a.Partial == b.Partial && (a.Unknown || b.Mean >= a.Low-1e-8 && b.Mean <= a.High+1e-8) || id == constituent.EnergyKcal {
					continue
				}
				assert.True(t, told[id].Moved, "%s left %g to %g: %g", id, a.Low, a.High, b.Mean)
			}
		})
	}
}

// What a home version of the largest demo costs, the drink's own figures aside.
func BenchmarkHome(b *testing.B) {
	text, err := data.FS.ReadFile("demo/harbour-veil.yaml")
	require.NoError(b, err)
	for b.Loop() {
		kitchenOf(b, string(text), 2)
	}
}
