package assaytest

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/recipe"
)

// Options of a run.
type Options struct {
	Draws int
	Seed  uint64
	assay.Want
}

// Run calculates a drink once.
func Run(ctx context.Context, d *drink.Drink, faults *fail.List, foods recipe.Foods, o Options) (*assay.Assay, error) {
	r, err := recipe.Find(ctx, d, faults, foods)
	if err != nil {
		return nil, err
	}
	ens := estimate.Ensemble{Seed: o.Seed, N: o.Draws + 1}
	if o.Why != "" {
		ens.Journal = &estimate.Journal{}
	}
	o.Intervals, o.Chemistry = true, true
	return assay.Prepare(r, ens).Run(ctx, nil, o.Want)
}

// Assay assays the text of a drink file, whole.
func Assay(t testing.TB, foods Library, text string, draws int, wanted ...constituent.ID) *assay.Assay {
	t.Helper()
	d, faults := drink.Parse("test", []byte(text), nil)
	a, err := Run(context.Background(), d, faults, foods, Options{Draws: draws, Seed: 1, Want: assay.Want{Figures: wanted, Whole: true}})
	require.NoError(t, err)
	return a
}

// Figure gives a figure that must be there.
func Figure(t testing.TB, list composition.Composition, id constituent.ID) composition.Figure {
	t.Helper()
	f, ok := list.Find(id)
	require.True(t, ok, "%s is not reported", id)
	return f
}
