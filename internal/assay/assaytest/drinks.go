package assaytest

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/drink"
	"sipsum/internal/recipe"
)

// Found finds the foods of the text of a drink file, which must have no fault.
func Found(t testing.TB, foods Library, text string) *recipe.Recipe {
	t.Helper()
	d, faults := drink.Parse("test", []byte(text), nil)
	r, err := recipe.Find(context.Background(), d, faults, foods)
	require.NoError(t, err)
	return r
}

// Asked calculates the text of a drink file as options say, with the seed of Assay.
func Asked(t testing.TB, foods Library, text string, o Options) *assay.Assay {
	t.Helper()
	o.Seed = 1
	d, faults := drink.Parse("test", []byte(text), nil)
	a, err := Run(context.Background(), d, faults, foods, o)
	require.NoError(t, err)
	return a
}

// Refused gives why the text of a drink file is not calculated.
func Refused(t testing.TB, foods Library, text string) string {
	t.Helper()
	d, faults := drink.Parse("test", []byte(text), nil)
	_, err := Run(context.Background(), d, faults, foods, Options{Draws: 24, Seed: 1, Want: assay.Want{Whole: true}})
	require.Error(t, err, "%s", text)
	return err.Error()
}
