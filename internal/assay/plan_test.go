package assay_test

import (
	"context"
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/recipe"
	"sipsum/internal/unit"
)

// planOf prepares the text of a drink file.
func planOf(t testing.TB, lib assaytest.Library, text string, draws int) *assay.Plan {
	t.Helper()
	d, faults := drink.Parse("test", []byte(text), nil)
	r, err := recipe.Find(context.Background(), d, faults, lib)
	require.NoError(t, err)
	return assay.Prepare(r, estimate.Ensemble{Seed: 1, N: draws + 1})
}

func amountOf(t testing.TB, text string) unit.Amount {
	t.Helper()
	parsed, rest, err := unit.ParseAmount(text)
	require.NoError(t, err)
	require.Empty(t, rest)
	return parsed
}

// The same plan run with amount after amount gives what a plan of its own gives, and what
// the file gives that has that amount written.
func TestARunWithOtherAmountsIsAFreshRun(t *testing.T) {
	lib := assaytest.Core(t)
	text := string(assaytest.FileOf(t, "data/demo/garden-tide.yaml"))
	want := assay.Want{Whole: true, Chemistry: true}
	kept := planOf(t, lib, text, 60)
	ctx := context.Background()
	written, err := kept.Run(ctx, nil, want)
	require.NoError(t, err)
	amounts := kept.Written()
	require.Len(t, amounts, 13)
	for _, path := range slices.Sorted(maps.Keys(amounts)) {
		for _, grams := range []string{"31 g ± 1 g", "47.5 g"} {
			other := amount.Amounts{path: amountOf(t, grams)}
			again, err := kept.Run(ctx, other, want)
			fresh, freshErr := planOf(t, lib, text, 60).Run(ctx, other, want)
			if freshErr != nil {
				require.Error(t, err, "%s = %s", path, grams)
				continue
			}
			require.NoError(t, err)
			same(t, fresh, again, path+" = "+grams)
		}
	}
	back, err := kept.Run(ctx, nil, want)
	require.NoError(t, err)
	same(t, written, back, "written")
}

// same holds two assays to be the same in all that is printed of them.
func same(t *testing.T, a, b *assay.Assay, what string) {
	t.Helper()
	printed := func(a *assay.Assay) []any {
		return []any{a.Mass, a.Volume, a.PerServing, a.Per100g, a.Per100ml, a.Components, a.Alone, a.Chemistry, a.Curdling, a.TableEnergy, a.Notes, a.Readings}
	}
	assert.Empty(t, assaytest.Differ(printed(a), printed(b)), what)
}
