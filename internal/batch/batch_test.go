package batch_test

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/batch"
	"sipsum/internal/batch/batchtest"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
	"sipsum/internal/unit"
)

// drinks are the demos, the drinks of testdata, and one of each thing that a batch minds.
func drinks(t *testing.T) map[string]string {
	t.Helper()
	all := map[string]string{}
	for _, pattern := range []string{"../../data/demo/*.yaml", "../../testdata/drinks/*.drink.yaml", "../../testdata/drinks/*/*.drink.yaml"} {
		names, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, name := range names {
			if !strings.Contains(name, "faults") {
				text, err := os.ReadFile(name)
				require.NoError(t, err)
				all[name] = string(text)
			}
		}
	}
	for name, text := range made {
		all[name] = text
	}
	return all
}

// made are invented drinks.
var made = map[string]string{
	"nested": `
drink: "Nested"
serves: 2
scale: 1 g
components:
  base:
    ingredients: [500 g core:water-tap, 100 g core:sugar-white]
    steps: [{reduce: {to: 400 g}}]
    keeps: 10 days at 4 °C
  tea base:
    ingredients: [150 g base, 5 % core:lemon-juice, 2 dash core:lemon-juice]
    steps:
      - steep: {ingredients: [6 g core:peppermint], collect: 140 g}
      - press: {collect: 130 g, through: cloth}
    keeps: 2 days at 4 °C
build: [60 g tea base, 20 g base, 100 ml core:water-tap]
finish: [{chill: {melt: 20 g}}]
garnish: [{food: "core:lemon-flesh", amount: 8 g, eaten: true}]
`,
	"shots": `
drink: "Shots"
serves: 1
scale: 0.1 g
components:
  shot:
    ingredients: [18 g core:coffee-roasted-arabica, 60 g core:water-brew]
    steps: [{brew: {out: 38 g, strength: 9.5 %}}]
build: [16 g shot, 100 g core:milk-whole]
`,
	"bottle": `
drink: "Bottle"
serves: 3
scale: 1 g
components:
  cordial:
    ingredients: [200 g core:apple-juice, 80 g core:sugar-white]
    steps: [{adjust: {ph: 3.2, with: core:citric-acid}}]
build: [40 g cordial, 300 g core:water-tap]
finish: [{carbonate: {bottle: 0.5 l, charge: 8 g, at: 4 °C, left: 3 g/l}}]
`,
}

// found finds the foods of a drink, those of the pantries beside it too.
func found(t *testing.T, name, text string, foods assaytest.Library, change func(*drink.Drink)) *recipe.Recipe {
	t.Helper()
	open := func(path string) ([]byte, error) { return os.ReadFile(filepath.Join(filepath.Dir(name), path)) }
	d, faults := drink.Parse(name, []byte(text), open)
	if change != nil {
		change(d)
	}
	r, err := recipe.Find(context.Background(), d, faults, foods)
	if err != nil {
		t.Skipf("needs another table: %v", err)
	}
	return r
}

func batchOf(t *testing.T, r *recipe.Recipe, ask batch.Ask) *batch.Batch {
	t.Helper()
	b, err := batch.Make(context.Background(), benchOf(r), ask)
	require.NoError(t, err)
	return b
}

func benchOf(r *recipe.Recipe) batch.Bench {
	return batch.Bench{
		Recipe: r, Central: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}),
		Hands:    assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 11, Only: amount.Stream}),
		Declared: func(string) (bool, error) { return true, nil },
	}
}

func figures(t *testing.T, r *recipe.Recipe) *assay.Assay {
	t.Helper()
	a, err := assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}).Run(context.Background(), nil, assay.Want{Whole: true, Chemistry: true})
	require.NoError(t, err)
	return a
}

// same holds two servings to each other.
func same(t *testing.T, want, got *assay.Assay, tolerance float64) {
	t.Helper()
	assert.InEpsilon(t, want.Mass.Mean, got.Mass.Mean, tolerance)
	require.Len(t, got.PerServing, len(want.PerServing))
	for i, f := range want.PerServing {
		g := got.PerServing[i]
		require.Equal(t, f.Constituent.ID, g.Constituent.ID)
		assert.InDelta(t, f.Mean, g.Mean, tolerance*math.Abs(f.Mean)+1e-12, "%s", f.Constituent.ID)
	}
	if want.Chemistry.PH.Why == "" {
		assert.InDelta(t, want.Chemistry.PH.Mean, got.Chemistry.PH.Mean, 1e-6)
	}
}

// A drink file written from a batch has the figures of the drink, through steep, press, over-collection.
func TestABatchIsTheDrink(t *testing.T) {
	foods := assaytest.Core(t)
	for name, text := range drinks(t) {
		t.Run(filepath.Base(name), func(t *testing.T) {
			r := found(t, name, text, foods, nil)
			b := batchOf(t, r, batch.Ask{Serves: 24})
			big := found(t, name, text, foods, func(d *drink.Drink) { batchtest.Written(d, b) })
			assert.GreaterOrEqual(t, big.Drink.Serves, 24)
			made := figures(t, big)
			same(t, figures(t, r), made, 1e-9)
			gives(t, b, made)
			buys(t, b, big, made)
			for _, atOnce := range []bool{false, true} { // and by the amounts that the card prints, before the scale rounds them
				printed := shown(b, atOnce, func(w batch.Weighed) unit.Amount { return w.Amount })
				same(t, made, figures(t, found(t, name, text, foods, func(d *drink.Drink) {
					batchtest.Written(d, b)
					batchtest.Change(d, func(path string, a *unit.Amount, _ *float64) {
						if to, ok := printed[path]; ok {
							*a = to
						}
					})
				})), 1e-9)
			}
		})
	}
}

// gives holds the pots to what is taken of them: the shopping list, fed forward through the yields of
// the big drink, gives the build.
func gives(t *testing.T, b *batch.Batch, made *assay.Assay) {
	t.Helper()
	for _, y := range made.Yields {
		if y.Component == "" {
			assert.InEpsilon(t, b.Grams*float64(made.Drink.Serves), y.Out, 1e-9)
			continue
		}
		i := slices.IndexFunc(b.Pots, func(p batch.Pot) bool { return p.Name == y.Component })
		require.GreaterOrEqual(t, i, 0, y.Component)
		assert.InEpsilon(t, b.Pots[i].Out, y.Out, 1e-9, y.Component)
		assert.InEpsilon(t, b.Pots[i].Needed, y.Used, 1e-9, y.Component)
		assert.GreaterOrEqual(t, y.Out, y.Used*(1-1e-9), "%s is short", y.Component)
	}
}

// buys holds the shopping list to what the big drink weighs in, garnish, ice and gas too.
func buys(t *testing.T, b *batch.Batch, big *recipe.Recipe, made *assay.Assay) {
	t.Helper()
	weighed, added, bought := map[food.ID]float64{}, 0.0, map[food.ID]float64{}
	for _, y := range made.Yields {
		for _, p := range y.Poured {
			if in := big.Lines[p.Path]; in.Component == nil {
				weighed[in.Profile.Food.ID] += p.Grams
			}
		}
		for _, step := range y.Steps {
			if step.Kind == "chill" || step.Kind == "dilute" {
				added += step.Added
			}
		}
	}
	for _, line := range big.Drink.Garnish {
		if in := big.Lines[line.Path]; !line.Eaten && in.Component == nil {
			weighed[in.Profile.Food.ID] += line.Amount.Base() * in.Grams
		}
	}
	for _, p := range b.Purchases {
		sum := 0.0
		for _, of := range p.Of {
			sum += of.Grams
		}
		assert.InEpsilon(t, p.Grams, sum, 1e-9, p.Name)
		if !math.IsNaN(p.Edible) {
			assert.InEpsilon(t, p.Weighed, p.Bought*p.Edible, 1e-9, p.Name)
		}
		assert.InEpsilon(t, p.Grams, p.Weighed, 0.06, "%s: bought as it is rounded", p.Name)
		switch {
		case p.Gas:
		case strings.HasPrefix(p.Name, "Ice,"), p.Name == "Water":
			added -= p.Grams
		default:
			bought[p.Food.ID] += p.Grams
		}
	}
	assert.InDelta(t, 0, added, 1e-6)
	require.Len(t, bought, len(weighed))
	for id, grams := range weighed {
		assert.InEpsilon(t, grams, bought[id], 1e-9, "%s", id)
	}
}

// The steps of the scale move no figure more than is told, and leave no pot short.
func TestRoundingMovesNoMoreThanIsTold(t *testing.T) {
	foods := assaytest.Core(t)
	moved := 0
	for name, text := range drinks(t) {
		t.Run(filepath.Base(name), func(t *testing.T) {
			r := found(t, name, text, foods, nil)
			b := batchOf(t, r, batch.Ask{Serves: 26})
			exact := figures(t, r)
			for _, atOnce := range []bool{false, true} {
				rounded := shown(b, atOnce, func(w batch.Weighed) unit.Amount { return w.Rounded })
				big := figures(t, found(t, name, text, foods, func(d *drink.Drink) {
					batchtest.Written(d, b)
					batchtest.Change(d, func(path string, a *unit.Amount, _ *float64) {
						if to, ok := rounded[path]; ok {
							*a = to
						}
					})
				}))
				for i, f := range exact.PerServing {
					if f.Mean == 0 || math.IsNaN(f.Mean) {
						continue
					}
					share := math.Abs(big.PerServing[i].Mean/f.Mean - 1)
					assert.LessOrEqual(t, share, b.Rounding.Share+1e-8, "%s", f.Constituent.ID)
					if share > 1e-6 {
						moved++
					}
				}
				if exact.Chemistry.PH.Why == "" {
					assert.InDelta(t, exact.Chemistry.PH.Mean, big.Chemistry.PH.Mean, b.Rounding.PH+1e-6)
				}
				for _, y := range big.Yields {
					if i := slices.IndexFunc(b.Pots, func(p batch.Pot) bool { return p.Name == y.Component }); i >= 0 && atOnce {
						assert.GreaterOrEqual(t, y.Out, y.Used-1e-6, "%s is short", y.Component)
					}
				}
			}
		})
	}
	assert.Greater(t, moved, 50)
}

// shown gives what the card shows of the whole batch, by path, of what a run can change: a reading
// stays as it was read.
func shown(b *batch.Batch, atOnce bool, of func(batch.Weighed) unit.Amount) map[string]unit.Amount {
	all := map[string]unit.Amount{}
	add := func(list []batch.Weighed, again float64) {
		for _, w := range list {
			if k := w.Amount.Measure.Kind; k == unit.Mass || k == unit.Volume {
				a := of(w)
				a.Number *= again
				all[w.Path] = a
			}
		}
	}
	moves := func(list []batch.Move, again float64) {
		for _, m := range list {
			if m.Step.Kind() != "measured" {
				add(m.Lines, again)
				add(m.Amounts, again)
			}
		}
	}
	for _, p := range b.Pots {
		again := 1.0
		if p.Whole != nil {
			again = p.Times
		}
		add(p.Lines, again)
		moves(p.Moves, again)
	}
	serve := b.Serves
	if b.Whole {
		serve = b.Rounds
	}
	for _, p := range slices.Concat(b.Build, b.Garnish) {
		add([]batch.Weighed{p.Weighed}, serve)
	}
	if atOnce {
		for _, p := range b.Build {
			add([]batch.Weighed{p.All}, 1)
		}
	}
	moves(b.Finish, serve)
	return all
}

// A brew is made as a whole, for whole glasses.
func TestWholeShots(t *testing.T) {
	foods := assaytest.Core(t)
	for _, of := range []struct {
		glass         string
		shots, serves float64
	}{{"16 g", 12, 2}, {"19 g", 12, 2}, {"20 g", 24, 1}, {"40 g", 48, 0.5}, {"38 g", 24, 1}} {
		text := strings.Replace(made["shots"], "16 g shot", of.glass+" shot", 1)
		b := batchOf(t, found(t, "shots", text, foods, nil), batch.Ask{Serves: 24})
		require.Len(t, b.Pots, 1)
		assert.Equal(t, of.shots, b.Pots[0].Times, of.glass)
		require.NotNil(t, b.Pots[0].Whole)
		assert.Equal(t, of.serves, b.Pots[0].Whole.Glasses, of.glass)
		assert.Equal(t, 18.0, b.Pots[0].Lines[0].Rounded.Number, "the dose stays")
		assert.True(t, b.Pots[0].Glass)
	}
}

// Of a brew that keeps nothing is left in between: 24 glasses of 20 g are 13 brews of 38 g.
func TestKeptBrews(t *testing.T) {
	text := strings.Replace(made["shots"], "16 g shot", "20 g shot", 1)
	text = strings.Replace(text, "strength: 9.5 %}}]\n", "strength: 9.5 %}}]\n    keeps: 2 days at 4 °C\n", 1)
	b := batchOf(t, found(t, "shots", text, assaytest.Core(t), nil), batch.Ask{Serves: 24})
	assert.Equal(t, 13.0, b.Pots[0].Times)
	assert.InDelta(t, 14, b.Pots[0].Left(), 1e-9)
	assert.False(t, b.Pots[0].Glass)
	assert.Equal(t, 1.0, b.Pots[0].Ahead)
}

// A bottle is charged as it is written: three glasses each.
func TestWholeBottles(t *testing.T) {
	b := batchOf(t, found(t, "bottle", made["bottle"], assaytest.Core(t), nil), batch.Ask{Serves: 10})
	require.Len(t, b.Charges(), 1)
	c := b.Charges()[0]
	assert.Equal(t, 4.0, c.Count)
	assert.Equal(t, 3.0, c.Glasses)
	assert.Equal(t, 10.0, b.Serves)
	assert.Equal(t, 40.0, b.Build[0].Rounded.Number, "into each bottle")
	assert.InEpsilon(t, 160, b.Pots[0].Needed, 1e-9)
	i := slices.IndexFunc(b.Purchases, func(p batch.Purchase) bool { return p.Gas })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, 4.0, b.Purchases[i].Pieces)
	assert.InEpsilon(t, 32, b.Purchases[i].Grams, 1e-9)
}

// A mass goes back through the melt: 200 g a serve, of which 10 g are ice, are eleven serves of 2.2 kg.
func TestMass(t *testing.T) {
	const text = "drink: Mass\nserves: 1\nbuild: [190 g core:water-tap]\nfinish: [{chill: {melt: 10 g}}]\n"
	b := batchOf(t, found(t, "mass", text, assaytest.Core(t), nil), batch.Ask{Grams: 2200})
	assert.InEpsilon(t, 11, b.Serves, 1e-9)
	assert.InEpsilon(t, 2090, b.Build[0].All.Amount.Number, 1e-9)
	assert.InEpsilon(t, 110, b.Purchases[1].Grams, 1e-9)
}

// A pot is never made smaller than its recipe, and what is left of it is told.
func TestNeverLessThanTheRecipe(t *testing.T) {
	text := string(assaytest.FileOf(t, "data/demo/garden-tide.yaml"))
	b := batchOf(t, found(t, "garden", text, assaytest.Core(t), nil), batch.Ask{Serves: 2})
	i := slices.IndexFunc(b.Pots, func(p batch.Pot) bool { return p.Name == "passion syrup" })
	assert.Equal(t, 1.0, b.Pots[i].Times)
	assert.InDelta(t, 170, b.Pots[i].Left(), 1e-6)
}

// Each pot as early as it keeps, or before what is made of it keeps.
func TestDays(t *testing.T) {
	foods := assaytest.Core(t)
	ahead := func(text string) map[string]float64 {
		days := map[string]float64{}
		for _, p := range batchOf(t, found(t, "nested", text, foods, nil), batch.Ask{Serves: 4}).Pots {
			days[p.Name] = p.Ahead
		}
		return days
	}
	text := made["nested"]
	assert.Equal(t, map[string]float64{"base": 9, "tea base": 1}, ahead(text), "the day it is made counts; the build pours both")
	text = strings.Replace(text, "20 g base, ", "", 1)
	assert.Equal(t, map[string]float64{"base": 9, "tea base": 1}, ahead(text), "what is only mixed keeps the date of its oldest part")
	boiled := strings.Replace(text, "      - press: {collect: 130 g, through: cloth}\n", "      - press: {collect: 130 g, through: cloth}\n      - heat: {at: 85 °C, for: 5 min}\n", 1)
	assert.Equal(t, map[string]float64{"base": 10, "tea base": 1}, ahead(boiled), "boiled it has days of its own")
	text = strings.Replace(text, "    keeps: 10 days at 4 °C\n", "", 1)
	assert.Equal(t, map[string]float64{"base": 1, "tea base": 1}, ahead(text), "nobody says how long it keeps: when the other is made")
	r := found(t, "nested", made["nested"], foods, nil)
	bench := benchOf(r)
	bench.Allowed = map[string]float64{"base": 7, "tea base": 7}
	b, err := batch.Make(context.Background(), bench, batch.Ask{Serves: 4})
	require.NoError(t, err)
	assert.Equal(t, 7.0, b.Pots[0].UseUp, "a code allows no longer")
	assert.Equal(t, 2.0, b.Pots[1].UseUp)
}

// A mix is five days old only if its parts keep five days: of one that keeps two, it keeps two, and
// says why.
func TestAMixKeepsAsItsOldestPart(t *testing.T) {
	const text = `
drink: "Mix"
serves: 4
components:
  brew: {ingredients: [100 g core:filter-coffee], keeps: 2 days at 4 °C}
  base: {ingredients: [90 g brew, 10 g core:sugar-white], keeps: 5 days at 4 °C}
build: [80 g base]
`
	pots := batchOf(t, found(t, "mix", text, assaytest.Core(t), nil), batch.Ask{Serves: 4}).Pots
	require.Len(t, pots, 2)
	assert.Equal(t, []float64{1, 1}, []float64{pots[0].Ahead, pots[1].Ahead})
	assert.Equal(t, 2.0, pots[1].UseUp)
	assert.Equal(t, "brew", pots[1].Oldest)
	assert.Empty(t, pots[0].Before, "its days are counted to the service")
}

func TestAsks(t *testing.T) {
	r := found(t, "shots", made["shots"], assaytest.Core(t), nil)
	for _, ask := range []batch.Ask{{}, {Serves: -1}, {Serves: 10_000_000}, {Grams: -5}, {Grams: 1e9}, {Grams: math.NaN()}} {
		_, err := batch.Make(context.Background(), benchOf(r), ask)
		assert.ErrorContains(t, err, "nobody makes", "%v", ask)
	}
}
