package claims_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
	"sipsum/internal/source"
)

func noWorks(string, string) (source.Work, bool) { return source.Work{}, false }

// run calculates a drink file as the command does where claims are judged.
func run(t testing.TB, foods assaytest.Library, text string, draws int) *assay.Assay {
	t.Helper()
	d, faults := drink.Parse("test", []byte(text), nil)
	r, err := recipe.Find(context.Background(), d, faults, foods)
	require.NoError(t, err)
	ens := estimate.Ensemble{Seed: 1, N: draws + 1, Journal: &estimate.Journal{}}
	a, err := assay.Prepare(r, ens).Run(context.Background(), nil, assay.Want{
		Figures: claims.Constituents(d), Intervals: true, Chemistry: true, Draws: true, Next: true,
	})
	require.NoError(t, err)
	return a
}

// benchOf is what its claims are judged with. Whatever is listed for a food is declared.
func benchOf(a *assay.Assay, foods assaytest.Library) claims.Bench {
	return claims.Bench{
		Assay: a, Works: noWorks, Shelf: shelf(foods),
		Declared: func(word string) (bool, error) {
			return slices.ContainsFunc(a.Drink.Foods, func(f drink.OwnFood) bool {
				return slices.ContainsFunc(f.Allergens, func(w drink.Word) bool { return w.Text == word })
			}), nil
		},
		Again: func(ctx context.Context, d *drink.Drink, chemistry bool) (*assay.Assay, error) {
			r, err := recipe.Find(ctx, d, &fail.List{}, foods)
			if err != nil {
				return nil, err
			}
			return assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}).Run(ctx, nil, assay.Want{Chemistry: chemistry, Draws: true})
		},
	}
}

func judged(t testing.TB, foods assaytest.Library, text string) []claims.Said {
	t.Helper()
	said, err := benchOf(run(t, foods, text, 1000), foods).Judge(context.Background())
	require.NoError(t, err)
	return said
}

// shelf is a library of which foods are ranked, in the order of their codes.
type shelf assaytest.Library

func (s shelf) Called(name string) (*food.Food, error) {
	id, _ := food.ParseID(name)
	if f, ok := s[id]; ok {
		return f, nil
	}
	return nil, fail.New(fail.Wrong, "no food is called "+name, "")
}

func (s shelf) Table(id string) ([]*food.Food, error) {
	var all []*food.Food
	for _, f := range s {
		if f.ID.Table == id {
			all = append(all, f)
		}
	}
	slices.SortFunc(all, func(a, b *food.Food) int { return strings.Compare(a.ID.Code, b.ID.Code) })
	return all, nil
}
