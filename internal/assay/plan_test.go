package assay_test

import (
	"context"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/estimate"
	"sipsum/internal/recipe"
	"sipsum/internal/unit"
)

// planOf prepares the text of a drink file.
func planOf(t testing.TB, lib assaytest.Library, text string, draws int) *assay.Plan {
	t.Helper()
	return prepared(assaytest.Found(t, lib, text), draws)
}

func prepared(r *recipe.Recipe, draws int) *assay.Plan {
	return assay.Prepare(r, estimate.Ensemble{Seed: 1, N: draws + 1})
}

func amountOf(t testing.TB, text string) unit.Amount {
	t.Helper()
	parsed, rest, err := unit.ParseAmount(text)
	require.NoError(t, err)
	require.Empty(t, rest)
	return parsed
}

// The same plan run with amount after amount gives what a plan of its own gives.
func TestARunWithOtherAmountsIsAFreshRun(t *testing.T) {
	lib := assaytest.Core(t)
	text := string(assaytest.FileOf(t, "data/demo/garden-tide.yaml"))
	want := assay.Want{Whole: true, Chemistry: true}
	const draws = 60
	kept := planOf(t, lib, text, draws)
	ctx := context.Background()
	written, err := kept.Run(ctx, nil, want)
	require.NoError(t, err)
	amounts := kept.Written()
	require.Len(t, amounts, 13)
	for _, path := range slices.Sorted(maps.Keys(amounts)) {
		for _, grams := range []string{"31 g ± 1 g", "47.5 g"} {
			other := amount.Amounts{path: amountOf(t, grams)}
			again, err := kept.Run(ctx, other, want)
			fresh, freshErr := planOf(t, lib, text, draws).Run(ctx, other, want)
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

// A run with another amount is what the file gives that has that amount written.
func TestARunWithOtherAmountsIsTheDrinkSoWritten(t *testing.T) {
	lib := assaytest.Core(t)
	text := string(assaytest.FileOf(t, "data/demo/garden-tide.yaml"))
	want := assay.Want{Whole: true, Chemistry: true}
	const draws = 40
	plan := planOf(t, lib, text, draws)
	for _, c := range []struct{ path, written, other string }{
		{"passion syrup/core:passion-fruit-juice-purple", "150 g", "171 g ± 4 g"},
		{"passion syrup/core:sugar-white", "90 g", "82.5 g"},
		{"build/mint whey", "140 g", "155 g"},
	} {
		rewritten := strings.Replace(text, c.written+" "+c.path[strings.Index(c.path, "/")+1:], c.other+" "+c.path[strings.Index(c.path, "/")+1:], 1)
		require.NotEqual(t, text, rewritten)
		fresh, err := planOf(t, lib, rewritten, draws).Run(context.Background(), nil, want)
		require.NoError(t, err)
		again, err := plan.Run(context.Background(), amount.Amounts{c.path: amountOf(t, c.other)}, want)
		require.NoError(t, err)
		same(t, fresh, again, c.path)
	}
}

// same holds two assays to be the same in all that is printed of them, and in every draw.
func same(t *testing.T, a, b *assay.Assay, what string) {
	t.Helper()
	printed := func(a *assay.Assay) []any {
		return []any{
			a.Mass, a.Volume, a.Density, a.PerServing, a.Per100g, a.Per100ml, a.Components, a.Alone, a.Chemistry, a.Curdling, a.TableEnergy,
			a.Notes, a.Readings, a.Garnish, cells(a), a.Seed, a.Draws,
		}
	}
	require.Empty(t, assaytest.Differ(printed(a), printed(b)), what)
}
