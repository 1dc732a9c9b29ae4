package sweep_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/batch"
	"sipsum/internal/batch/batchtest"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/recipe"
)

// batchedDrinks is how many of the cook's drinks are made many times.
const batchedDrinks = 20

// A drink file that is written from a batch has the drink's figures, whatever the cook has made.
func TestABatchOfAnyDrinkIsTheDrink(t *testing.T) {
	k := newKitchen(t)
	made := 0
	for number := range batchedDrinks {
		text, _ := random(k, number*everyNthDrink%randomDrinks)
		find := func(change func(*drink.Drink)) (*recipe.Recipe, error) {
			d, faults := drink.Parse("swept.drink.yaml", []byte(text), nil)
			change(d)
			return recipe.Find(context.Background(), d, faults, k)
		}
		r, err := find(func(*drink.Drink) {})
		if err != nil {
			continue // refused, as other tests judge
		}
		ens := estimate.Ensemble{Seed: 1, N: 1}
		b, err := batch.Make(context.Background(), batch.Bench{
			Recipe: r, Central: assay.Prepare(r, ens), Hands: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 3, Only: amount.Stream}),
			Declared: func(string) (bool, error) { return true, nil },
		}, batch.Ask{Serves: 12})
		if err != nil {
			assert.Equal(t, fail.Wrong, fail.ExitCode(err), "%v of\n%s", err, text)
			continue
		}
		big, err := find(func(d *drink.Drink) { batchtest.Written(d, b) })
		require.NoError(t, err, text)
		run := func(r *recipe.Recipe) (*assay.Assay, error) {
			return assay.Prepare(r, ens).Run(context.Background(), nil, assay.Want{Chemistry: true})
		}
		one, err := run(r)
		require.NoError(t, err, text)
		many, err := run(big)
		require.NoError(t, err, text)
		made++
		require.Len(t, many.PerServing, len(one.PerServing), text)
		for i, f := range one.PerServing {
			assert.InDelta(t, f.Mean, many.PerServing[i].Mean, 1e-9*math.Abs(f.Mean)+1e-12, "%s of\n%s", f.Constituent.ID, text)
		}
	}
	assert.Greater(t, made, batchedDrinks/3)
}
