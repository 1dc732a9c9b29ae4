package sheet_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
	"sipsum/internal/tables/core"
)

type shelf map[food.ID]*food.Food

func (s shelf) Food(_ context.Context, id food.ID) (*food.Food, error) {
	if f, ok := s[id]; ok {
		return f, nil
	}
	return nil, fail.New(fail.Wrong, "no food "+id.String(), "")
}
func (s shelf) Named(context.Context, string) (food.ID, bool, error) { return food.ID{}, false, nil }
func (s shelf) Near(context.Context, string) []string                { return nil }

// A caution that cannot be ruled out must rest on something that is there: of every core
// food, 200 g of it alone, at least a third of the limit is known. An alarm that nobody
// would believe, such as polyols in a plain coffee, teaches to skip the others.
func TestCautionsOfCoreFoodsAreBelievable(t *testing.T) {
	release, err := core.Format.Open(context.Background(), "", "")
	require.NoError(t, err)
	foods := shelf{}
	for f, err := range release.Foods {
		require.NoError(t, err)
		foods[f.ID] = f
	}
	require.Greater(t, len(foods), 400)
	limits := map[string]struct { // in 200 g: EFSA 2015; Regulation (EU) No 1169/2011, Annex III, 4.1 and 2.4, Article 9; 27 CFR 16.10
		of   constituent.ID
		most float64
	}{
		"caffeine": {constituent.Caffeine, 1}, "caffeine-dose": {constituent.Caffeine, 200}, "caffeine-day": {constituent.Caffeine, 400}, "caffeine-acute": {constituent.Caffeine, 1000},
		"alcohol": {constituent.Alcohol, 0.08}, "alcohol-pregnancy": {constituent.Alcohol, 0.08}, "alcohol-and-caffeine": {constituent.Alcohol, 1.9}, // 0.05 % vol; 1.2 % vol
		"caffeine-statement": {constituent.Caffeine, 2 * 15},
		"alcohol-warning":    {constituent.Alcohol, 0.8}, "alcohol-strength": {constituent.Alcohol, 1.9}, // g: ethanol 0.789 g/ml
		"quinine-by-figure-us": {"quinine", 0.2 * 83}, "quinine-by-figure-eu": {"quinine", 0.2 * 85}, // 21 CFR 172.575; BfR 020/2008
		"salt-day": {constituent.Sodium, 2000}, "salt-acute": {constituent.Sodium, 5000}, // WHO 2012; Campbell and Train 2017
		"polyol-statement": {constituent.Polyols, 2 * 10},
	}
	possible := 0
	for id := range foods {
		d, faults := drink.Parse("alone", []byte("drink: \"Alone\"\nserves: 1\nbuild: [200 g "+id.String()+"]\n"), nil)
		a, err := assaytest.Run(context.Background(), d, faults, foods, assaytest.Options{Draws: 60, Seed: 1})
		require.NoError(t, err)
		s, err := sheet.Build("test", a, nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, []string{"eu", "us"})
		require.NoError(t, err)
		for _, declaration := range s.Allergens() {
			for _, c := range declaration.Cautions {
				if !strings.HasPrefix(c.Text, "Cannot be ruled out") {
					continue
				}
				if c.Code == "sulphites" { // no figure decides it: a question about the food does
					continue
				}
				possible++
				limit, ok := limits[c.Code]
				if !assert.True(t, ok, "%s: %s because of %s", id, c.Code, c.Because) {
					continue
				}
				known, _, _ := a.AmountOf(limit.of)
				assert.GreaterOrEqual(t, known, limit.most/3, "%s: %s because of %s", id, c.Code, c.Because)
			}
		}
	}
	assert.Positive(t, possible, "chocolate of 160 mg of caffeine in 200 g may hold 200 mg")
}
