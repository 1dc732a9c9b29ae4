package fit_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/recipe"
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
