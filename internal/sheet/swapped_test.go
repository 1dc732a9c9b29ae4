package sheet_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// swapped looks for foods in the place of one, among a few of the core table.
func swapped(t *testing.T, text string, x fit.Exchange, among ...string) *sheet.Swapped {
	t.Helper()
	lib := assaytest.Core(t)
	bench := func(r *recipe.Recipe) fit.Bench {
		const draws = 100
		return fit.Bench{
			Central: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}), Drawn: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: draws + 1}),
			Drink: r.Drink, Declared: func(string) (bool, error) { return false, nil },
		}
	}
	r := assaytest.Found(t, lib, text)
	var pool []*food.Food
	for _, code := range among {
		pool = append(pool, lib[food.ID{Table: "core", Code: code}])
	}
	res, err := bench(r).Swap(context.Background(), r, x, pool, func(ctx context.Context, d *drink.Drink) (fit.Bench, *recipe.Recipe, error) {
		found, err := recipe.Find(ctx, d, &fail.List{}, lib)
		if err != nil {
			return fit.Bench{}, nil, err
		}
		return bench(found), found, nil
	})
	require.NoError(t, err)
	of := func(a *assay.Assay) *sheet.Sheet {
		s, err := sheet.Build("sipsum test", a, nil, func(_, id string) (source.Work, bool) { return source.Work{ID: id}, true }, nil)
		require.NoError(t, err)
		return s
	}
	var after []*sheet.Sheet
	for _, f := range res.Found {
		after = append(after, of(f.After))
	}
	return sheet.Swap(of(res.Before), res, after, []string{"milk"})
}

// Regulation (EU) No 1169/2011, Annex II: almonds are nuts (8), oats are cereals containing gluten (1), soybeans stand
// by themselves (6), milk (7) is declared no more. A food that nobody has assessed is to be decided.
func TestASwapTellsWhichAllergensComeAndGo(t *testing.T) {
	const latte = "\ndrink: hot\nserves: 1\nat: 60 °C\nscale: 1 g\nrules: [eu]\nbuild: [40 g core:espresso, 160 g core:milk-whole]\n"
	s := swapped(t, latte, fit.Exchange{Food: "Milk", Without: allergen.LeavesOf("milk")}, "oat-drink", "soya-drink-plain", "almond-drink", "almond-drink-sweetened", "milk-goat")
	said := map[string]string{}
	for _, f := range s.Found {
		var lines []string
		for _, l := range f.Declares() {
			lines = append(lines, l.Sentence())
		}
		said[f.Food.ID.Code] = strings.Join(lines, "\n")
	}
	require.NotEmpty(t, said)
	assert.NotContains(t, said, "milk-goat")
	comes := map[string]string{"oat-drink": "Cereals containing gluten", "soya-drink-plain": "Soybeans", "almond-drink": "Nuts", "almond-drink-sweetened": "Nuts"}
	for code, text := range said {
		assert.Contains(t, text, "EU: Milk: declared before", code)
		assert.Contains(t, text, comes[code]+": none found of what was assessed before, declared then", code)
		assert.NotContains(t, strings.ToLower(text), "free")
	}
}

// The page says what gives way, what is held, what moves with its interval, and that nothing is written.
func TestTheLeafOfASwap(t *testing.T) {
	const tea = "\ndrink: tea\nserves: 1\nscale: 0.1 g\nbuild: [200 g core:black-tea, 12 g core:sugar-white]\n"
	s := swapped(t, tea, fit.Exchange{Food: "core:sugar-white"}, "fructose", "honey", "xylitol")
	var text []string
	for _, b := range s.Leaf().Blocks {
		text = append(text, b.Heading)
		for _, l := range b.Lines {
			text = append(text, l.Sentence())
		}
	}
	page := strings.Join(text, "\n")
	assert.Contains(t, page, "what it brings: sweet")
	assert.Contains(t, page, "Fructose (core:fructose)")
	assert.Contains(t, page, "laxative", "the caution that xylitol brings (Regulation (EU) No 1169/2011, Annex III, 2.4)")
	assert.Contains(t, page, "Nothing is written")
	assert.Less(t, s.Found[0].Sure, 0.75, "how sweet a sugar is differs between works")
	assert.True(t, s.Decide(), "what stays in less than 75 of 100 is not likely (data/claim_verdicts.csv), and to be decided")
	s.Found[0].Sure = 0.75
	assert.False(t, s.Decide())
	assert.Contains(t, s.Line(), "core:")
}
