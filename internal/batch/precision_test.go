package batch_test

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/batch"
	"sipsum/internal/estimate"
	"sipsum/internal/recipe"
	"sipsum/internal/taste"
)

// Sugar in so much water that its own volume hardly counts: its sweetness goes with its grams, and is
// noticed from 4.2 % on (data/batch.csv).
const sweetened = `
drink: "Sweetened"
serves: 1
scale: 0.1 g
build: [20 g SPREAD core:sugar-white, 2000 g core:water-pure]
`

func TestCoarsestStep(t *testing.T) {
	b := batchOf(t, found(t, "sweet", replaced(sweetened, ""), assaytest.Core(t), nil), batch.Ask{Serves: 1})
	sugar := b.Build[0]
	assert.Equal(t, 1.0, sugar.Step.Base, "half a gram is 2.5 % of 20 g, half of five is 12.5 %")
	assert.Empty(t, sugar.Step.Bound, "beyond 5 % of itself nothing is asked")
	assert.Equal(t, 100.0, b.Build[1].Step.Base, "50 g are 2.5 % of the water, and no coarser step is listed")
	text := replaced(sweetened, "") + "claims: [{say: much, check: serving(SUGAR) >= 19.8 g}]\n"
	b = batchOf(t, found(t, "sweet", text, assaytest.Core(t), nil), batch.Ask{Serves: 1})
	assert.Equal(t, 0.1, b.Build[0].Step.Base, "a quarter of a gram too little breaks the claim, a twentieth does not")
	assert.Equal(t, "serving(SUGAR) >= 19.8 g", b.Build[0].Step.Bound)
}

func replaced(text, spread string) string {
	if spread != "" {
		spread = "± " + spread
	}
	return strings.Replace(text, "SPREAD", spread, 1)
}

// 20 g ± 2 g are rectangular between 18 g and 22 g: of these 4.2 % of 20 g either way are 42 in 100.
func TestServesInside(t *testing.T) {
	r := found(t, "sweet", replaced(sweetened, "2 g"), assaytest.Core(t), nil)
	bench := benchOf(r)
	bench.Hands = assay.Prepare(r, estimate.Ensemble{Seed: 3, N: 401, Only: amount.Stream})
	b, err := batch.Make(context.Background(), bench, batch.Ask{Serves: 1})
	require.NoError(t, err)
	assert.InDelta(t, 0.42, b.Precision.Inside, 0.08, "%d draws", b.Precision.Draws)
	assert.Equal(t, "sweet", b.Precision.First)
	r = found(t, "sweet", replaced(sweetened, ""), assaytest.Core(t), nil)
	assert.Equal(t, 1.0, batchOf(t, r, batch.Ask{Serves: 1}).Precision.Inside, "a scale of 0.1 g")
}

// Whatever a drink is made of: as coarse as is told it keeps its tastes, and a step coarser it does
// not, or is off by more than anything may be.
func TestStepsAreTheCoarsest(t *testing.T) {
	foods := assaytest.Core(t)
	steps := []float64{0.01, 0.1, 0.5, 1, 5, 10, 50, 100}
	r := found(t, "nested", made["nested"], foods, nil)
	b := batchOf(t, r, batch.Ask{Serves: 12})
	now := tastes(t, r, nil)
	checked := 0
	for _, p := range b.Pots {
		for _, w := range p.Lines {
			if w.Step.Base == 0 {
				continue
			}
			checked++
			stays := func(step float64) bool {
				if step/2 > 0.05*w.Amount.Base() {
					return false
				}
				for _, off := range []float64{-step / 2, step / 2} {
					a := w.Amount
					a.Number = (a.Number + off) / p.Times
					for i, x := range tastes(t, r, amount.Amounts{w.Path: a}) {
						if math.Abs(x/now[i]-1) > []float64{0.042, 0.0953, 0.26}[i] {
							return false
						}
					}
				}
				return true
			}
			assert.True(t, stays(w.Step.Base), "%s to %v", w.Path, w.Step.Base)
			if i := slices.Index(steps, w.Step.Base); i+1 < len(steps) {
				assert.False(t, stays(steps[i+1]), "%s to %v", w.Path, steps[i+1])
			}
		}
	}
	assert.Greater(t, checked, 2)
}

// tastes are sweet, sour and thick of a drink with other amounts.
func tastes(t *testing.T, r *recipe.Recipe, other amount.Amounts) []float64 {
	t.Helper()
	a, err := assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}).Run(context.Background(), other, assay.Want{Chemistry: true, Draws: true})
	require.NoError(t, err)
	p := taste.Of(a.Glass())
	return []float64{p.Sweet.Mean, p.Sour.Titratable.Mean, p.Body.Viscosity.Mean}
}
