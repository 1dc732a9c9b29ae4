package batch

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
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/recipe"
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

// library is the core table, and a way to the pantries beside a drink.
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

func batchOf(t *testing.T, r *recipe.Recipe, ask Ask) *Batch {
	t.Helper()
	b, err := Make(context.Background(), benchOf(r), ask)
	require.NoError(t, err)
	return b
}

func benchOf(r *recipe.Recipe) Bench {
	return Bench{
		Recipe: r, Central: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}),
		Hands:    assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 61, Only: amount.Stream}),
		Declared: func(string) (bool, error) { return true, nil },
	}
}

// written is the drink as a file would have it that serves the whole batch.
func written(d *drink.Drink, b *Batch) {
	amounts, more := b.Amounts(), map[string]float64{}
	for _, w := range b.all() {
		more[w.Path] = w.more / w.file
	}
	d.Serves = int(math.Round(b.Rounds * float64(d.Serves)))
	lines := func(list []drink.Line) {
		for i := range list {
			if a, ok := amounts[list[i].Path]; ok {
				list[i].Amount = a
			}
			list[i].Count *= more[list[i].Path]
		}
	}
	steps := func(list []drink.Step) {
		for _, step := range list {
			lines(step.Lines())
			for _, p := range amountsOf(step) {
				*p.amount = amounts[step.StepPath()+"/"+p.name]
			}
		}
	}
	lines(d.Build)
	lines(d.Garnish)
	steps(d.Finish)
	for i := range d.Components {
		c := &d.Components[i]
		if !slices.ContainsFunc(b.Pots, func(p Pot) bool { return p.Name == c.Name }) {
			continue // nothing of it is drunk
		}
		lines(c.Ingredients)
		steps(c.Steps)
		if c.Measured != nil {
			steps([]drink.Step{c.Measured})
		}
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
			b := batchOf(t, r, Ask{Serves: 24})
			big := found(t, name, text, foods, func(d *drink.Drink) { written(d, b) })
			assert.Equal(t, max(24, int(math.Round(b.Rounds*float64(r.Drink.Serves)))), big.Drink.Serves)
			same(t, figures(t, r), figures(t, big), 1e-9)
		})
	}
}
