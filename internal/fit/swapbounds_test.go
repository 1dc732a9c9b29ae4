package fit_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/fit"
)

const brewed = `
drink: cold
serves: 1
scale: 0.1 g
at: 5 °C
build: [60 g core:cold-brew, 12 g core:sugar-white, 30 g core:lemon-juice, 60 g core:water-sparkling-low, 1 g core:citric-acid]
`

// A powder that leaves a rest is not poured where a liquid was; what is sold with gas stands for what has gas.
func TestPowdersAndStillWatersStandForNothingThatPoursOrSparkles(t *testing.T) {
	res, err := exchanged(t, brewed, fit.Exchange{Food: "core:cold-brew"}, "instant-coffee", "instant-coffee-decaf", "instant-coffee-chicory", "filter-coffee")
	require.NoError(t, err)
	assert.Equal(t, []string{"filter-coffee"}, codes(res))
	res, err = exchanged(t, brewed, fit.Exchange{Food: "core:water-sparkling-low"}, "water-mineral-very-low", "soda-water")
	require.NoError(t, err)
	assert.Equal(t, []string{"soda-water"}, codes(res))
}

// Vinegar is smelled: it stands behind what is as sour by other acids, however near it comes.
func TestVinegarStandsLast(t *testing.T) {
	res, err := exchanged(t, brewed, fit.Exchange{Food: "core:lemon-juice"}, "vinegar-distilled", "vinegar-rice", "lime-juice")
	require.NoError(t, err)
	require.Contains(t, codes(res), "vinegar-distilled")
	assert.Equal(t, "lime-juice", codes(res)[0])
	assert.True(t, of(t, res, "vinegar-distilled").Smelled)
	assert.False(t, of(t, res, "lime-juice").Smelled)
}

// Smith and Hong-Shum: of mannitol 100 g of water hold 17 g at 20 °C, of fumaric acid 0.63 g at 25 °C.
func TestWhatDoesNotDissolveIsLeftOut(t *testing.T) {
	const syrup = `
drink: syrup
serves: 1
scale: 0.1 g
components:
  sweet:
    ingredients: [100 g core:sugar-white, 100 g core:water-pure]
build: [20 g sweet, 100 g core:water-pure]
`
	res, err := exchanged(t, syrup, fit.Exchange{Food: "core:sugar-white"}, "mannitol", "isomalt", "fructose")
	require.NoError(t, err)
	assert.Equal(t, []string{"fructose"}, codes(res))
	why := map[string]string{}
	for _, x := range res.Out {
		why[x.Food.ID.Code] = x.Why
	}
	assert.Contains(t, why["mannitol"], "does not dissolve")
	for grams, out := range map[string]bool{"1 g": false, "4 g": true} {
		res, err := exchanged(t, "\ndrink: sour\nserves: 1\nscale: 0.01 g\nbuild: ["+grams+" core:citric-acid, 200 g core:water-pure]\n", fit.Exchange{Food: "core:citric-acid"}, "fumaric-acid")
		require.NoError(t, err)
		assert.Equal(t, out, len(res.Found) == 0, grams)
		if !out {
			assert.NotEmpty(t, res.Found[0].Thick, "near what water holds in the cold")
		}
	}
}

// Of roasted coffee about 30 % dissolves as a rule (data/brewing.csv): a dose from which the same cup would take more
// is none.
func TestADoseGivesNoMoreThanCoffeeDoes(t *testing.T) {
	const shot = `
drink: shot
serves: 1
scale: 0.1 g
components:
  shot:
    ingredients: [18 g core:coffee-roasted-arabica, 60 g core:water-brew]
    steps:
      - brew: {out: 38 g, strength: 9.5 %}
build: [36 g shot, 100 g core:water-pure]
`
	res, err := exchanged(t, shot, fit.Exchange{Food: "core:coffee-roasted-arabica", Less: constituent.Must(constituent.Caffeine)}, "coffee-roasted-arabica-light", "coffee-roasted-arabica-dark")
	require.NoError(t, err)
	require.NotEmpty(t, append(codes(res), reasons(res)...))
	for _, f := range res.Found {
		assert.GreaterOrEqual(t, f.Poured[0].To.Number, 38*0.095/0.30-0.1, f.Food.ID.Code)
	}
}

func reasons(x *fit.Exchanged) (list []string) {
	for _, o := range x.Out {
		list = append(list, o.Why)
	}
	return list
}

// Less of the same is no less of it to what it is there for.
func TestPouringLessIsNotLess(t *testing.T) {
	res, err := exchanged(t, latte, fit.Exchange{Food: "core:sugar-white", Less: constituent.Must(constituent.Sugar)}, "sucrose-syrup", "sugar-brown", "erythritol")
	require.NoError(t, err)
	assert.Equal(t, []string{"erythritol"}, codes(res))
}

// Where no figure tells what a food is there for, and a guest must not have it, foods of its use stand at its mass.
func TestWhatMustGoGivesWayAtItsMass(t *testing.T) {
	const nutty = "\ndrink: nutty\nserves: 1\nscale: 0.1 g\nbuild: [180 g core:espresso, 5 g core:milk-skim]\n"
	res, err := exchanged(t, nutty, fit.Exchange{Food: "core:milk-skim", Without: []string{"cow milk", "milk"}}, "oat-drink", "cream-single")
	require.NoError(t, err)
	require.Equal(t, []string{"oat-drink"}, codes(res))
	assert.InDelta(t, 5, res.Found[0].Poured[0].To.Number, 1e-9)
	assert.Contains(t, strings.Join(res.Remarks, " "), "at its mass")
}

// A food is named by the words with which its code begins.
func TestAFoodIsNamedByItsCode(t *testing.T) {
	for _, name := range []string{"cold-brew", "lemon", "citric acid"} {
		_, err := exchanged(t, brewed, fit.Exchange{Food: name}, "lime-juice")
		require.NoError(t, err, name)
	}
}
