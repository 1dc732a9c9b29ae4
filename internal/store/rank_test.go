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

	list, _ = ranked(store.Ranking{Of: "CITAC", Per: "SUGAR", MoreThan: 2.5})
	assert.Equal(t, []string{"core:berry"}, list, "2.5 is no more than 2.5")
	left, err := db.LeftOut(t.Context(), store.Ranking{Of: "CITAC", Per: "SUGAR", MoreThan: 2.5, Tables: []string{"core"}})
	require.NoError(t, err)
	assert.Equal(t, store.LeftOut{Foods: 3, None: 1, NoBasis: 1}, left)

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

// What drinks are made of comes before what has more; core always does.
func TestRankPutsGroupsFirst(t *testing.T) {
	db := fresh(t)
	load(t, db, "core", "1", with(plain("core", "sorrel", "Sorrel"), "vegetable", 1, map[constituent.ID]float64{"MALAC": 1}))
	load(t, db, "sr", "1",
		with(plain("sr", "1", "Stew"), "other", 1, map[constituent.ID]float64{"MALAC": 9}),
		with(plain("sr", "2", "Juice"), "fruit juice", 1, map[constituent.ID]float64{"MALAC": 5}),
		with(plain("sr", "3", "Pie"), "other", 1, map[constituent.ID]float64{"MALAC": 8}))
	var list []string
	var first []bool
	q := store.Ranking{Of: "MALAC", First: []string{"fruit juice", "water"}}
	require.NoError(t, db.Rank(t.Context(), q, func(x store.Ranked) (bool, error) {
		list, first = append(list, x.ID.String()), append(first, x.First)
		return len(list) < 3, nil
	}))
	assert.Equal(t, []string{"sr:2", "core:sorrel", "sr:1"}, list)
	assert.Equal(t, []bool{true, true, false}, first)
}

func TestLeftOutCountsByWhy(t *testing.T) {
	db := fresh(t)
	unknown := plain("core", "unknown", "Unknown")
	limit := plain("core", "limit", "Limit")
	for f, state := range map[*food.Food]estimate.State{unknown: estimate.Unknown, limit: estimate.Below} {
		f.Values = []food.Value{{Constituent: "MALAC", Amount: food.None, SD: food.None, Low: food.None, High: food.None, Limit: 10, State: state, Source: "x"}}
	}
	load(t, db, "core", "1", unknown, limit, plain("core", "absent", "Absent"),
		with(plain("core", "zero", "Zero"), "water", 3, map[constituent.ID]float64{"MALAC": 0}),
		with(plain("core", "one", "One"), "fruit", 3, map[constituent.ID]float64{"MALAC": 1}),
		with(plain("core", "few", "Few"), "fruit", 1, map[constituent.ID]float64{"MALAC": 2, "SUGAR": 4}),
		with(plain("core", "both", "Both"), "fruit", 3, map[constituent.ID]float64{"MALAC": 3, "SUGAR": 4}))
	load(t, db, "sr", "1", with(plain("sr", "1", "Stew"), "other", 0, nil), with(plain("sr", "2", "Juice"), "fruit juice", 0, nil))
	count := func(q store.Ranking) store.LeftOut {
		out, err := db.LeftOut(t.Context(), q)
		require.NoError(t, err)
		return out
	}
	drinks := []string{"fruit juice"}
	assert.Equal(t, store.LeftOut{Foods: 8, NoFigure: 3, None: 2}, count(store.Ranking{Of: "MALAC", First: drinks}), "core and the juice; not the stew")
	assert.Equal(t, store.LeftOut{Foods: 9, NoFigure: 4, None: 2}, count(store.Ranking{Of: "MALAC"}))
	assert.Equal(t, store.LeftOut{Foods: 7, NoFigure: 2, None: 2, Few: 1, NoBasis: 1}, count(store.Ranking{Of: "MALAC", Per: "SUGAR", MinN: 2, Tables: []string{"core"}}))
	assert.Equal(t, store.LeftOut{Foods: 3}, count(store.Ranking{Of: "MALAC", Groups: []string{"fruit"}}))
	assert.Equal(t, store.LeftOut{Foods: 9, NoFigure: 9}, count(store.Ranking{Of: "QUINAC"}))
	_, err := db.LeftOut(t.Context(), store.Ranking{Of: "MALAC", Tables: []string{"no"}})
	assert.Error(t, err)
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
