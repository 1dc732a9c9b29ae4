package reading_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/recipe"
)

// exact is the difference that rounding of floating point numbers may make.
const exact = 1e-9

// read runs the text of a drink file as far as its readings and its serving go: neither
// components nor chemistry, which take the most of a run.
func read(t testing.TB, lib assaytest.Library, text string, draws int) *assay.Assay {
	t.Helper()
	d, faults := drink.Parse("test", []byte(text), nil)
	r, err := recipe.Find(t.Context(), d, faults, lib)
	require.NoError(t, err)
	a, err := assay.Prepare(r, estimate.Ensemble{Seed: 1, N: draws + 1}).Run(t.Context(), nil, assay.Want{})
	require.NoError(t, err)
	return a
}
