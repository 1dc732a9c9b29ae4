package assay_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/estimate"
	"sipsum/internal/taste"
)

// Where no kind of input varies, every draw of every figure is the central one, of what is worked out
// of the serving too.
func TestNothingVariesWhereNoKindDoes(t *testing.T) {
	foods := assaytest.Core(t)
	for _, name := range []string{"garden-tide", "harbour-veil", "slow-lantern"} {
		r := assaytest.Found(t, foods, string(assaytest.FileOf(t, "data/demo/"+name+".yaml")))
		a, err := assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 21, Only: "nothing"}).Run(context.Background(), nil, assay.Want{Draws: true, Chemistry: true, Whole: true})
		require.NoError(t, err)
		still := func(what string, mean float64, draws []float64) {
			t.Helper()
			require.NotEmpty(t, draws, what)
			for _, x := range draws {
				assert.InEpsilon(t, mean, x, 1e-9, "%s: %s", name, what)
			}
		}
		still("mass", a.Mass.Mean, a.Mass.Draws)
		still("volume", a.Volume.Mean, a.Volume.Draws)
		for _, f := range a.PerServing {
			if f.Mean > 0 {
				still(string(f.Constituent.ID), f.Mean, f.Draws)
			}
		}
		tastes := taste.Of(a.Glass())
		still("sweet", tastes.Sweet.Mean, tastes.Sweet.Draws)
		still("sour", tastes.Sour.Titratable.Mean, tastes.Sour.Titratable.Draws)
		still("thick", tastes.Body.Viscosity.Mean, tastes.Body.Viscosity.Draws)
	}
}
