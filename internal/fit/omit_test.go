package fit_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/recipe"
	"sipsum/internal/unit"
)

func omitted(t *testing.T, text, name string) (*fit.Omission, error) {
	t.Helper()
	lib := assaytest.Core(t)
	r := assaytest.Found(t, lib, text)
	return fit.Omit(context.Background(), benchOf(r), r, name, func(ctx context.Context, d *drink.Drink) (fit.Bench, *recipe.Recipe, error) {
		found, err := recipe.Find(ctx, d, &fail.List{}, lib)
		if err != nil {
			return fit.Bench{}, nil, err
		}
		return benchOf(found), found, nil
	})
}

const twoJuices = `
drink: two juices
serves: 1
foods:
  sweet: {name: Sweet, per: 100 g, values: {WATER: 80 g ± 0 g, SUGAR: 20 g ± 0 g, SUCS: 20 g ± 0 g}, source: made up}
  plain: {name: Plain, per: 100 g, values: {WATER: 99.5 g ± 0 g, CITAC: 500 mg ± 0 mg, OA: 0.5 g ± 0 g, K: 0 mg ± 0 mg, NA: 0 mg ± 0 mg, CA: 0 mg ± 0 mg, MG: 0 mg ± 0 mg, CLD: 0 mg ± 0 mg, P: 0 mg ± 0 mg, PROCNT: 0 g ± 0 g}, source: made up}
components:
  house sweet:
    ingredients: [100 g own:sweet]
    measured: {mass: 100 g}
build: [50 g house sweet, 100 g own:plain]
`

// 50 g of a syrup of 20 % bring 10 g of sugar and 40 g of water: its match has both, and nothing else
// moves. The juice keeps its acid.
func TestAMatchHasWhatThePartBrought(t *testing.T) {
	o, err := omitted(t, twoJuices, "House Sweet")
	require.NoError(t, err)
	assert.True(t, o.Met)
	assert.True(t, o.Close)
	to := moved(o.Result)
	assert.InDelta(t, 10, to["core:sugar-white"], 0.2)
	assert.InDelta(t, 40, to["core:water-pure"], 3.2, "2 % of the volume")
	assert.Len(t, to, 2, "what fills, and no other line")
	sugar := assaytest.Figure(t, o.After.PerServing, "SUGAR").Mean
	assert.InEpsilon(t, 10, sugar, 0.03)
	assert.InEpsilon(t, o.A.Volume.Mean, o.After.Volume.Mean, 0.02)
}

// Who asks for citric acid gets a match whose acidity is another's: 100 g of the juice bring 0.5 g,
// 7.8 mmol of protons, which 0.523 g of malic acid have too.
func TestAConstituentGoesWithItsFoodAndIsNotPutBack(t *testing.T) {
	o, err := omitted(t, twoJuices, "citric acid")
	require.NoError(t, err)
	assert.Equal(t, "own:plain", o.What)
	assert.Equal(t, "Plain", o.Called)
	assert.Equal(t, "build/core:malic-acid", o.Fillers[0])
	assert.InEpsilon(t, 0.523, moved(o.Result)["core:malic-acid"], 0.05)
	assert.True(t, o.Met)
}

// A food within a component goes from it, and the reading of its pot with it; a component of which
// nothing is left goes as a whole.
func TestReadingsOfWhatWasAreForgotten(t *testing.T) {
	const text = `
drink: read
serves: 1
components:
  syrup:
    ingredients: [100 g core:lemon-juice, 50 g core:sugar-white]
    measured: {brix: 38}
build: [40 g syrup, 60 g core:water-pure]
`
	o, err := omitted(t, text, "core:lemon-juice")
	require.NoError(t, err)
	assert.Equal(t, []string{"syrup"}, o.Unread)
	_, err = omitted(t, text, "quinic acid of the moon")
	assert.Error(t, err)
	o, err = omitted(t, twoJuices, "own:sweet")
	require.NoError(t, err)
	assert.Empty(t, o.Drink.Components)
	_, err = omitted(t, "drink: x\nserves: 1\nbuild: [40 g core:lemon-juice]\n", "core:lemon-juice")
	assert.ErrorContains(t, err, "nothing is left")
}

const cordial = `
drink: cordial
serves: 1
foods:
  plain: {name: Plain, per: 100 g, values: {WATER: 88 g ± 0 g, SUGAR: 10 g ± 0 g, SUCS: 10 g ± 0 g, CITAC: 2 g ± 0 g, OA: 2 g ± 0 g, K: 0 mg ± 0 mg, NA: 0 mg ± 0 mg, CA: 0 mg ± 0 mg, MG: 0 mg ± 0 mg, CLD: 0 mg ± 0 mg, P: 0 mg ± 0 mg, PROCNT: 0 g ± 0 g}, source: made up}
components:
  cordial:
    ingredients: [150 g own:plain, 100 g core:sugar-white]
    steps:
      - reduce: {to: 220 g}
      - strain: {collect: 200 g, through: cloth}
build: [40 g cordial, 100 g core:water-pure]
`

// 150 g of a juice of 10 % sugar and 2 % acid go from a pot that is boiled down: 15 g of sugar, 3 g of
// acid and 132 g of water stand in their place, so that the steps find what they did.
func TestWhatGoesFromAPotIsReplacedInIt(t *testing.T) {
	o, err := omitted(t, cordial, "own:plain")
	require.NoError(t, err)
	require.Len(t, o.Places, 1)
	assert.Equal(t, "cordial", o.Places[0].Pot)
	assert.True(t, o.Close)
	to := map[string]float64{}
	for _, m := range o.Moves {
		to[m.Path] = m.To
	}
	assert.InDelta(t, 15, to["cordial/core:sugar-white~match"], 1.5, "beside the sugar that is there")
	assert.InDelta(t, 3, to["cordial/core:citric-acid"], 0.1)
	assert.InDelta(t, 132, to["cordial/core:water-pure"], 2)
	assert.Len(t, to, 3)
	assert.InEpsilon(t, o.A.Mass.Mean, o.After.Mass.Mean, 1e-9, "as much is poured, and is as strong")
	share, err := omitted(t, strings.Replace(cordial, "150 g own:plain, 100 g core:sugar-white", "75 % own:plain, 150 g core:sugar-white", 1), "own:plain")
	require.NoError(t, err)
	require.Len(t, share.Places[0].By, 3)
	assert.InDelta(t, 7.5, share.Places[0].By[0].Amount.Number, 0.01, "of a share, shares")
	assert.Equal(t, unit.Share, share.Places[0].By[0].Amount.Measure.Kind)
}

// What goes in by a step goes with it; what is added to a pot has its place filled there.
func TestWhatGoesInByAStepIsLeftOut(t *testing.T) {
	const text = `
drink: steps
serves: 1
components:
  syrup:
    ingredients: [100 g core:water-pure, 100 g core:sugar-white]
    steps:
      - infuse: {ingredients: [5 g core:bay-leaf], at: 90 °C, for: 5 min, collect: 190 g}
      - measured: {brix: 50}
      - add: [20 g core:lemon-juice]
      - adjust: {ph: 2.4, with: core:malic-acid}
build: [40 g syrup, 60 g core:water-pure]
finish:
  - add: 0.1 g core:salt
`
	o, err := omitted(t, text, "core:bay-leaf")
	require.NoError(t, err)
	assert.Equal(t, []fit.Undone{{Pot: "syrup", Step: "steep"}}, o.Undone)
	assert.Equal(t, []string{"syrup"}, o.Unread)
	assert.Empty(t, o.Places, "it was taken out again")
	o, err = omitted(t, text, "core:lemon-juice")
	require.NoError(t, err)
	require.Len(t, o.Places, 1)
	syrup, _ := o.Drink.Component("syrup")
	assert.Equal(t, []string{"steep", "add", "adjust"}, kinds(syrup.Steps))
	assert.Equal(t, o.Places[0].By, syrup.Steps[1].Lines())
	o, err = omitted(t, text, "core:malic-acid")
	require.NoError(t, err)
	assert.Equal(t, []fit.Undone{{Pot: "syrup", Step: "adjust"}}, o.Undone)
	o, err = omitted(t, text, "core:salt")
	require.NoError(t, err)
	assert.Equal(t, []fit.Undone{{Step: "add"}}, o.Undone)
	assert.Empty(t, o.Moves, "nothing takes its place, and nothing else moves")
	assert.True(t, o.Met)
}

func kinds(steps []drink.Step) (list []string) {
	for _, s := range steps {
		list = append(list, s.Kind())
	}
	return list
}

// Soda takes acid away: no filler brings its match back, and no other line may.
func TestNoOtherLineMoves(t *testing.T) {
	o, err := omitted(t, "drink: x\nserves: 1\nbuild: [60 g core:lemon-juice, 60 g core:water-pure, 2 g core:sodium-bicarbonate]\n", "core:sodium-bicarbonate")
	require.NoError(t, err)
	for _, m := range o.Moves {
		assert.Contains(t, o.Fillers, m.Path)
	}
	assert.False(t, o.Met)
}

// A filler is another food than what is left out, and water is left out of nothing. A step that cannot do
// without a part says which pot to leave out instead.
func TestWhatCannotBeLeftOutSaysWhatCan(t *testing.T) {
	o, err := omitted(t, cordial, "core:sugar-white")
	require.NoError(t, err)
	assert.Equal(t, "core:glucose", o.Places[0].By[0].Food)
	_, err = omitted(t, cordial, "core:water-pure")
	assert.ErrorContains(t, err, "nothing would be missing")
	_, err = omitted(t, `
drink: x
serves: 1
components:
  shot:
    ingredients: [18 g core:coffee-roasted-arabica, 60 g core:water-brew]
    steps: [brew: {out: 38 g, strength: 9.5 %}]
build: [36 g shot, 60 g core:water-pure]
`, "caffeine")
	assert.ErrorContains(t, err, `--omit "shot"`)
	assert.NotContains(t, err.Error(), "\n")
}

// Nothing that was left out stands in the match: over the demos, and drinks of ten kinds, of each food and each component
// that can be left out, no row of the match is of that food, or was poured by that component.
func TestNothingThatWasLeftOutStandsInTheMatch(t *testing.T) {
	drinks := []string{
		"build: [40 g core:lemon-juice, 20 g core:sugar-white, 140 g core:water-pure, 20 g core:honey]",
		"build: [200 g core:water-pure, 20 g core:sugar-white, 2 g core:citric-acid]",
		"build: [200 g core:water-pure, 10 g core:glucose, 10 g core:sugar-white, 2 g core:malic-acid, 1 g core:citric-acid]",
		"build: [30 ml core:rum-40, 60 g core:orange-juice, 10 g core:sugar-brown]",
		"build: [60 g core:milk-whole, 30 g core:espresso, 10 g core:sugar-white]",
		"build: [10 g core:fructose, 10 g core:glucose, 10 g core:sugar-white, 60 g core:lemon-juice]",
		"components:\n  syrup: {ingredients: [100 g core:sugar-white, 100 g core:water-pure, 4 g core:citric-acid]}\nbuild: [40 g syrup, 60 g core:water-pure, 5 g core:sugar-white]",
		"components:\n  syrup: {ingredients: [100 g core:sugar-white, 100 g core:lemon-juice], steps: [reduce: {to: 150 g}]}\nbuild: [40 g syrup, 30 g core:lemon-juice, 30 g core:water-pure]",
		"components:\n  sour: {ingredients: [50 g core:lemon-juice, 50 g core:water-pure]}\n  punch: {ingredients: [60 g sour, 40 g core:honey]}\nbuild: [60 g punch, 20 g sour]",
		"build: [60 g core:apple-juice, 20 g core:pear-nectar]\nfinish: [add: 5 g core:sugar-white]\ngarnish: [{food: core:honey, amount: 2 g, eaten: true}]",
	}
	for i, text := range drinks {
		drinks[i] = "\ndrink: x\nserves: 1\n" + text + "\n"
	}
	for _, file := range []string{"garden-tide", "slow-lantern", "harbour-veil"} {
		drinks = append(drinks, string(assaytest.FileOf(t, "data/demo/"+file+".yaml")))
	}
	lib, left := assaytest.Core(t), 0
	for _, text := range drinks {
		r := assaytest.Found(t, lib, text)
		var parts []string
		for _, in := range r.Lines {
			if in.Profile != nil {
				parts = append(parts, in.Profile.Food.ID.String())
			}
		}
		for _, c := range r.Drink.Components {
			parts = append(parts, c.Name)
		}
		slices.Sort(parts)
		for _, part := range slices.Compact(parts) {
			o, err := omitted(t, text, part)
			if err != nil {
				assert.NotEmpty(t, err.Error())
				continue
			}
			left++
			for _, row := range o.After.Serving.Rows {
				assert.NotEqual(t, part, row.Profile.Food.ID.String(), text)
				assert.NotEqual(t, part, drink.Owner(row.Line), text)
			}
		}
	}
	assert.Greater(t, left, 30, "most can be left out")
}
