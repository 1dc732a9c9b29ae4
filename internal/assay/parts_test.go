package assay_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
)

// twins has a component with the name of a food, which both stand in the build, and two
// own foods of one name.
const twins = `drink: "Twins"
serves: 1
foods:
  oat-a: {name: "House oat", per: 100 g, values: {SUGAR: 10 g}, source: "invented"}
  oat-b: {name: "house  oat", per: 100 g, values: {SUGAR: 20 g}, source: "invented"}
components:
  Lemon juice, fresh:
    ingredients: [30 g core:lemon-juice, 20 g core:sugar-white]
    measured: {ph: 2.90 ± 0.05}
build: ["50 g Lemon juice, fresh", 40 g core:lemon-juice, 30 g own:oat-a, 20 g own:oat-b, "10 g Lemon juice, fresh"]
`

func TestPartsAreKnownByWhatIsPouredNotByItsName(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), twins, 200)
	type part struct {
		name  string
		grams float64
	}
	var parts []part
	for _, c := range a.Components {
		parts = append(parts, part{c.Name, c.Mass.Mean})
		if c.House {
			require.NotNil(t, c.Chemistry)
			assert.InDelta(t, 2.90, c.Chemistry.PHMeter.Mean, 0.01, "its reading is its own")
		}
	}
	require.Len(t, parts, 4)
	for i, want := range []part{
		{"Lemon juice, fresh", 60}, {"Lemon juice, fresh (core:lemon-juice)", 40}, {"House oat (own:oat-a)", 30}, {"house  oat (own:oat-b)", 20},
	} {
		assert.Equal(t, want.name, parts[i].name)
		assert.InDelta(t, want.grams, parts[i].grams, 1e-9, want.name)
	}
	assert.InDelta(t, 3, assaytest.Figure(t, a.Components[2].Constituents, constituent.Sugar).Mean, 1e-9, "30 g of 10 %")
	assert.InDelta(t, 4, assaytest.Figure(t, a.Components[3].Constituents, constituent.Sugar).Mean, 1e-9, "20 g of 20 %")
}

// inside is a drink of which half of what was made is served: of an espresso that is only
// used inside a punch, a syrup of a punch, or poured itself.
const inside = `drink: "Inside"
serves: 2
compare-with: espresso
components:
  espresso: {ingredients: [40 g core:espresso]}
  base:
    ingredients: [20 g espresso, 180 g core:water-pure]
  punch:
    ingredients: [100 g base, 50 g core:water-pure]
    steps: [reduce: {to: 120 g}, strain: {collect: 100 g, through: paper}]
build: [%s]
`

func TestWhatIsOnlyUsedInsideStandsAloneAsItWasMade(t *testing.T) {
	lib := assaytest.Core(t)
	a := assaytest.Assay(t, lib, fmt.Sprintf(inside, "50 g punch"), 200, constituent.Caffeine)
	require.NotNil(t, a.Alone)
	// 20 g × 100/200 in the punch, of which 50 of 100 g are poured, for two.
	assert.InDelta(t, 2.5, a.Alone.Mass.Mean, 1e-9)
	perGram := lib[food.ID{Table: "core", Code: "espresso"}]
	caffeine, ok := perGram.Value(constituent.Caffeine)
	require.True(t, ok)
	assert.InDelta(t, 2.5*caffeine.Amount/100, assaytest.Figure(t, a.Alone.Constituents, constituent.Caffeine).Mean, 1e-6)

	// Of one that is poured it is what the build pours of it.
	a = assaytest.Assay(t, lib, fmt.Sprintf(inside, "50 g punch, 30 g espresso"), 200, constituent.Caffeine)
	require.NotNil(t, a.Alone)
	assert.InDelta(t, 15, a.Alone.Mass.Mean, 1e-9)
}

func TestAGarnishThatIsNotEatenIsNamedAndBringsNothing(t *testing.T) {
	const text = `drink: "Rim"
serves: 2
components:
  rim: {ingredients: [10 g core:sugar-white], steps: [add: 1 g core:salt]}
  spare: {ingredients: [10 g core:milk-whole]}
build: [100 g core:water-pure]
garnish: [10 g core:cream-heavy, 5 g rim, {food: core:honey, amount: 5 %, eaten: true}]
`
	a := assaytest.Assay(t, assaytest.Core(t), text, 50)
	assert.InDelta(t, (100+0.05*15)/2, a.Mass.Mean, 1e-9, "5 % of the garnish's other lines is honey; nothing else is drunk")
	assert.Equal(t, []recipe.Garnish{
		{PartID: recipe.PartID{Food: food.ID{Table: "core", Code: "cream-heavy"}}, Name: "Cream, heavy whipping", Amount: "10 g"},
		{PartID: recipe.PartID{Component: "rim"}, Name: "rim", Amount: "5 g"},
		{PartID: recipe.PartID{Food: food.ID{Table: "core", Code: "honey"}}, Name: "Honey", Amount: "5 %", Eaten: true},
	}, a.Garnish)
	eaten := map[string]bool{}
	for _, it := range a.Items {
		eaten[it.Food.ID.Code] = it.Eaten
	}
	assert.Equal(t, map[string]bool{"water-pure": true, "cream-heavy": false, "sugar-white": false, "salt": false, "honey": true}, eaten,
		"what a step of an uneaten component adds is not eaten, and what no line uses is not in the drink")
}

// What the bar's scale would not show was weighed on another: no draw of it is far from
// what was written.
func TestALittleIsAsFineAsItIsWritten(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\nscale: 10 g\nbuild: [1.0 g core:citric-acid, 100 g core:water-pure]\n", 500)
	acid := a.Components[0].Mass
	assert.InDelta(t, 1, acid.Mean, 1e-9)
	assert.GreaterOrEqual(t, acid.Low, 0.95)
	assert.LessOrEqual(t, acid.High, 1.05)
	assert.Greater(t, a.Components[1].Mass.High-a.Components[1].Mass.Low, 8.0, "the water is as the scale shows it")
}
