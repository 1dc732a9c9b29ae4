package sheet_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/label"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
	"sipsum/internal/tables/core"
)

// plainly is a claim that a row of the card of eu says by itself: the most in 100 ml.
var plainly = map[string]struct {
	row  string
	most float64
}{ // Regulation (EC) No 1924/2006, annex; salt is sodium x 2.5
	"fat-free": {"fat", 0.5}, "low fat": {"fat", 1.5}, "sugars-free": {"sugars", 0.5}, "low sugars": {"sugars", 2.5},
	"energy-free": {"energy", 17}, "low energy": {"energy", 80}, "low sodium/salt": {"salt", 0.3}, "very low sodium/salt": {"salt", 0.1},
}

// Of every core food, alone: what is claimed of it is what its card says, nothing sweetened
// is without added sugars, and nothing strong bears a claim of eu.
func TestClaimsOfCoreFoods(t *testing.T) {
	release, err := core.Format.Open(context.Background(), "", "")
	require.NoError(t, err)
	foods := shelf{}
	for f, err := range release.Foods {
		require.NoError(t, err)
		foods[f.ID] = f
	}
	count := map[string]int{}
	for id, f := range foods {
		d, faults := drink.Parse("alone", []byte("drink: \"Alone\"\nserves: 1\nbuild: [200 g "+id.String()+"]\n"), nil)
		a, err := assaytest.Run(context.Background(), d, faults, foods, assaytest.Options{Draws: 40, Seed: 1})
		require.NoError(t, err)
		s, err := sheet.Build("test", a, nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, []string{"eu", "us"})
		require.NoError(t, err)
		eu := &s.Cards()[0]
		for _, k := range eu.Claims {
			assert.NotEmpty(t, k.Why, "%s: %s", id, k.Claim)
			count[k.Claim+": "+k.Verdict]++
			if claim, ok := plainly[k.Claim]; ok && k.Allowed {
				cell := lineOf(t, eu, claim.row).Per100ml
				require.NotNil(t, cell, "%s: %s", id, k.Claim)
				most := 0.0
				if cell.Value != nil {
					most = *cell.Value
				}
				if cell.Most != nil {
					most = max(most, *cell.Most)
				}
				assert.LessOrEqual(t, most, claim.most*(1+1e-9), "%s: %s: %s", id, k.Claim, k.Why)
			}
			if f.Group == "spirit" || f.Group == "wine" && !strings.Contains(f.Name(), "alcohol") {
				assert.False(t, k.Allowed, "%s: %s: %s", id, k.Claim, k.Why)
			}
		}
		sugars, known := f.Value(constituent.Sugar)
		sweetened := (!known || sugars.Amount != 0) && slices.ContainsFunc(f.Marks, func(m food.Mark) bool { return m.Kind == "added sugar" && m.Share > 0 })
		for _, c := range s.Cards() {
			for _, k := range c.Claims {
				if sweetened && strings.Contains(k.Claim, "no added sugar") {
					assert.False(t, k.Allowed, "%s: %s: %s", id, k.Claim, k.Why)
				}
			}
		}
	}
	for _, claim := range []string{"fat-free", "sugars-free", "low energy", "with no added sugars", "source of potassium", "very low sodium/salt"} {
		assert.Positive(t, count[claim+": allowed"], claim)
		assert.Positive(t, count[claim+": not allowed"], claim)
		t.Logf("%s: allowed %d, not yet %d, undecided %d, not %d", claim, count[claim+": allowed"], count[claim+": not allowed yet"], count[claim+": cannot be decided"], count[claim+": not allowed"])
	}
}

func lineOf(t *testing.T, c *label.Card, key string) label.Row {
	t.Helper()
	i := slices.IndexFunc(c.Rows, func(r label.Row) bool { return r.Key == key })
	require.GreaterOrEqual(t, i, 0, key)
	return c.Rows[i]
}
