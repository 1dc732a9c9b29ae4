package store_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/store"
)

// with gives an invented food some amounts.
func with(f *food.Food, group string, n int, amounts map[constituent.ID]float64) *food.Food {
	f.Group = group
	for _, c := range constituent.All() {
		if amount, ok := amounts[c.ID]; ok {
			f.Values = append(f.Values, food.Value{
				Constituent: c.ID, Amount: amount, SD: food.None, N: n, Low: food.None, High: food.None, Limit: food.None,
				State: estimate.Measured, Source: "x",
			})
		}
	}
	return f
}

func TestRank(t *testing.T) {
	db := fresh(t)
	load(t, db, "core", "1",
		with(plain("core", "lemon", "Lemon"), "citrus juice", 6, map[constituent.ID]float64{"CITAC": 5000, "SUGAR": 2.5, "BIOT": 1}),
		with(plain("core", "berry", "Berry"), "fruit", 2, map[constituent.ID]float64{"CITAC": 3000, "SUGAR": 10, "BIOT": 3}),
		with(plain("core", "water", "Water"), "water", 0, map[constituent.ID]float64{"CITAC": 0, "SUGAR": 0}))
	load(t, db, "sr", "1", with(plain("sr", "1", "Leaf"), "herb", 1, map[constituent.ID]float64{"CITAC": 40}))
	ranked := func(q store.Ranking) (list []string, figures []float64) {
		require.NoError(t, db.Rank(t.Context(), q, func(x store.Ranked) (bool, error) {
			list, figures = append(list, x.ID.String()), append(figures, x.Figure)
			return true, nil
		}))
		return list, figures
	}
	list, figures := ranked(store.Ranking{Of: "CITAC"})
	assert.Equal(t, []string{"core:lemon", "core:berry", "sr:1"}, list, "a zero is no rank")
	assert.Equal(t, []float64{5000, 3000, 40}, figures)

	list, figures = ranked(store.Ranking{Of: "CITAC", Per: "SUGAR"})
	assert.Equal(t, []string{"core:lemon", "core:berry"}, list, "without sugars there is no ratio")
	assert.Equal(t, []float64{2000, 300}, figures)

	list, _ = ranked(store.Ranking{Of: "CITAC", MinN: 2, Groups: []string{"fruit", "herb"}})
	assert.Equal(t, []string{"core:berry"}, list)
	list, _ = ranked(store.Ranking{Of: "CITAC", Tables: []string{"sr"}})
	assert.Equal(t, []string{"sr:1"}, list)
	list, _ = ranked(store.Ranking{Of: "BIOT"})
	assert.Equal(t, []string{"core:berry", "core:lemon"}, list, "not in the index, ranked all the same")
	assert.Error(t, db.Rank(t.Context(), store.Ranking{Of: "CITAC", Tables: []string{"no"}}, nil))
}

func TestRankStopsWhenThereIsEnough(t *testing.T) {
	db := fresh(t)
	load(t, db, "core", "1",
		with(plain("core", "a", "A"), "fruit", 1, map[constituent.ID]float64{"MALAC": 1}),
		with(plain("core", "b", "B"), "fruit", 1, map[constituent.ID]float64{"MALAC": 2}))
	seen := 0
	require.NoError(t, db.Rank(t.Context(), store.Ranking{Of: "MALAC"}, func(store.Ranked) (bool, error) { seen++; return false, nil }))
	assert.Equal(t, 1, seen)
}

func TestAllGivesFoodsByCode(t *testing.T) {
	db := fresh(t)
	load(t, db, "sr", "1", plain("sr", "b", "B"), plain("sr", "10", "Ten"), plain("sr", "9", "Nine"))
	var codes []string
	for f, err := range db.All(t.Context(), "sr") {
		require.NoError(t, err)
		codes = append(codes, f.ID.Code)
	}
	assert.Equal(t, []string{"10", "9", "b"}, codes)
	for f, err := range db.All(t.Context(), "sr") {
		require.NoError(t, err)
		assert.Equal(t, "10", f.ID.Code)
		break
	}
	for _, err := range db.All(t.Context(), "no") {
		assert.Error(t, err)
	}
}
