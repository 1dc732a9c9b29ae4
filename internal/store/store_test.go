package store_test

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/store"
)

var noon = time.Date(2026, 3, 1, 12, 0, 0, 0, time.FixedZone("", 3600))

func open(tb testing.TB, path string) *store.DB {
	tb.Helper()
	db, err := store.Open(tb.Context(), path, store.Options{Now: func() time.Time { return noon }})
	require.NoError(tb, err)
	tb.Cleanup(func() { require.NoError(tb, db.Close()) })
	return db
}

func fresh(tb testing.TB) *store.DB {
	return open(tb, filepath.Join(tb.TempDir(), "new folder", "a?b#c%20.db"))
}

func stream(foods ...*food.Food) iter.Seq2[*food.Food, error] {
	return func(yield func(*food.Food, error) bool) {
		for _, f := range foods {
			if !yield(f, nil) {
				return
			}
		}
	}
}

func table(id, hash string) source.Table {
	return source.Table{ID: id, Format: "invented", Title: "Invented table", Edition: "1", Publisher: "nobody", Licence: "CC0", Citation: "none", Hash: hash}
}

// plain makes a food with names and one value.
func plain(table, code string, names ...string) *food.Food {
	f := &food.Food{ID: food.ID{Table: table, Code: code}, Edible: food.None, Density: food.Density{GramsPerMl: food.None, SD: food.None},
		Values: []food.Value{{Constituent: constituent.Water, Amount: 90, SD: food.None, Low: food.None, High: food.None, Limit: food.None}}}
	for _, n := range names {
		f.Names = append(f.Names, food.Name{Language: "en", Text: n})
	}
	return f
}

func load(tb testing.TB, db *store.DB, id, hash string, foods ...*food.Food) store.Loaded {
	tb.Helper()
	done, err := db.Load(tb.Context(), store.Incoming{Table: table(id, hash), Foods: stream(foods...)}, nil)
	require.NoError(tb, err)
	return done
}

// many streams n foods with as many values, each value being mark.
func many(n, values int, mark float64) iter.Seq2[*food.Food, error] {
	pattern := make([]food.Value, values)
	for j := range pattern {
		pattern[j] = food.Value{Constituent: constituent.ID(fmt.Sprintf("big:%d", j)), Amount: mark, SD: food.None, N: 3,
			Low: food.None, High: food.None, Limit: food.None, Source: "src1", Ref: "A"}
	}
	return func(yield func(*food.Food, error) bool) {
		for i := range n {
			f := plain("big", fmt.Sprintf("%05d", i), fmt.Sprintf("invented food %d", i))
			f.Values = slices.Clone(pattern)
			if !yield(f, nil) {
				return
			}
		}
	}
}

func TestFoodComesBackAsItWent(t *testing.T) {
	none := food.None
	want := &food.Food{
		ID: food.ID{Table: "inv", Code: "00042"},
		Names: []food.Name{
			{Language: "en", Text: `Syrup "no. 1", 'house', crème – 100% \ ; DROP TABLE food; --`},
			{Language: "he", Text: "סירופ \u202eabc\u202c"},
			{Language: "ja", Text: "レモン果汁"},
			{Language: "", Text: "tab\tand\nline"},
		},
		Group: "syrup", PublisherGroup: "Sweets — Groß",
		Values: []food.Value{ // in order of ids, as they come back
			{Constituent: "CITAC", Amount: none, SD: none, Low: none, High: none, Limit: 0.05, State: estimate.Below, Source: "w1", Ref: "Table 2, row 3"},
			{Constituent: "FAT", Amount: none, SD: none, Low: none, High: none, Limit: none, State: estimate.Trace, Source: "w1"},
			{Constituent: "MALAC", Amount: none, SD: none, Low: none, High: none, Limit: none, State: estimate.Unknown},
			{Constituent: "NA", Amount: 0, SD: none, Low: none, High: none, Limit: none, State: estimate.Assumed},
			{Constituent: "SUGAR", Amount: 1.0 / 3, SD: 0.1, N: 7, Low: 1e-300, High: 1e300, Limit: none, State: estimate.Measured, Source: "w2", Ref: "p. 7"},
			{Constituent: "WATER", Amount: 60, SD: 0, N: 0, Low: 0, High: 0, Limit: 0, State: estimate.Calculated},
			{Constituent: "inv:257", Amount: 2, SD: none, Low: none, High: none, Limit: none, State: estimate.Calculated},
		},
		Density:  food.Density{GramsPerMl: 1.3, SD: 0.01, Source: "w2"},
		Edible:   0.75,
		Portions: []food.Portion{{Name: `fruit (2-1/8" dia)`, Grams: 58, SD: none}, {Name: "cup", Grams: 244.5, SD: 2}},
		Marks:    []food.Mark{{Kind: "allergen", Value: "", Share: 0, Source: "w1"}, {Kind: "added sugar", Value: "sugar", Share: 1, Source: "w2"}, {Kind: "caution", Value: "x", Share: none}},
		Chemical: true, Note: "invented; for a test",
	}
	bare := &food.Food{ID: food.ID{Table: "inv", Code: "nothing stated"}, Edible: none, Density: food.Density{GramsPerMl: none, SD: none}}
	in := store.Incoming{
		Table:   table("inv", "aa"),
		Columns: []food.Column{{ID: "SUGAR", Number: "269", Name: "Sugars, total", Unit: "g", Decimals: 2, Constituent: true}, {ID: "inv:257", Number: "257", Name: "Adjusted Protein", Unit: "g", Decimals: -1}},
		Works:   []source.Work{{ID: "w2", Citation: "B (2021)", URL: "https://example.org", Licence: "CC0", Grade: "A", Note: "n"}, {ID: "w1", Citation: "A (2020)"}},
		Foods:   stream(want, bare),
	}
	db := fresh(t)
	done, err := db.Load(t.Context(), in, nil)
	require.NoError(t, err)
	assert.Equal(t, store.Loaded{Foods: 2, Values: 7}, done)

	text := func(x any) string { return fmt.Sprintf("%#v", x) } // NaN is not equal to itself
	got, err := db.Food(t.Context(), want.ID)
	require.NoError(t, err)
	assert.Equal(t, text(want), text(got))
	got, err = db.Food(t.Context(), bare.ID)
	require.NoError(t, err)
	assert.Equal(t, text(bare), text(got))

	columns, err := db.Columns(t.Context(), "inv")
	require.NoError(t, err)
	assert.Equal(t, in.Columns, columns)
	works, err := db.Works(t.Context(), "inv")
	require.NoError(t, err)
	assert.Equal(t, in.Works, works)
	tables, err := db.Tables(t.Context())
	require.NoError(t, err)
	assert.Equal(t, []store.Info{{Table: in.Table, Foods: 2, Values: 7, LoadedAt: noon.UTC()}}, tables)
}

// The numbers of the states are in every user's file.
func TestStatesKeepTheirNumbers(t *testing.T) {
	words := []string{"measured", "calculated", "assumed", "trace", "below", "unknown"}
	for i, word := range words {
		assert.Equal(t, word, estimate.State(i).String())
	}
	assert.Equal(t, estimate.State(len(words)-1), estimate.Unknown)
}

func TestCodesAreComparedAfterPadding(t *testing.T) {
	db := fresh(t)
	load(t, db, "sr", "1", plain("sr", "01077", "Milk"), plain("sr", "09160", "Lime juice"))
	load(t, db, "padless", "1", plain("padless", "304", "Three"), plain("padless", "7", "Seven"), plain("padless", "007", "Agent"), plain("padless", "0", "Zero"), plain("padless", "A01", "Letters"))
	for _, c := range []struct{ table, ask, code string }{
		{"sr", "09160", "09160"}, {"sr", "9160", "09160"}, {"sr", "1077", "01077"}, {"sr", "001077", "01077"},
		{"padless", "0304", "304"}, {"padless", "304", "304"},
		{"padless", "7", "7"}, {"padless", "007", "007"}, {"padless", "000", "0"}, {"padless", "A01", "A01"},
		{"padless", "07", ""}, {"padless", "01", ""}, {"padless", "A1", ""}, {"padless", "", ""}, {"sr", "9161", ""},
	} {
		f, err := db.Food(t.Context(), food.ID{Table: c.table, Code: c.ask})
		if c.code == "" {
			assert.ErrorIs(t, err, store.ErrNoFood, "%s:%s", c.table, c.ask)
			assert.Equal(t, fail.Wrong, fail.ExitCode(err))
			continue
		}
		if assert.NoError(t, err, "%s:%s", c.table, c.ask) {
			assert.Equal(t, food.ID{Table: c.table, Code: c.code}, f.ID)
		}
	}
}

func TestFoodsReportsAllThatAreMissing(t *testing.T) {
	db := fresh(t)
	load(t, db, "core", "1", plain("core", "lemon-juice", "Lemon juice"), plain("core", "lime-juice", "Lime juice"))
	foods, err := db.Foods(t.Context(), []food.ID{{Table: "core", Code: "lime-juice"}, {Table: "core", Code: "lemon-juice"}, {Table: "core", Code: "lime-juice"}})
	require.NoError(t, err)
	assert.Equal(t, []string{"Lime juice", "Lemon juice", "Lime juice"}, []string{foods[0].Name(), foods[1].Name(), foods[2].Name()})

	_, err = db.Foods(t.Context(), []food.ID{{Table: "core", Code: "lemn-juice"}, {Table: "core", Code: "lime-juice"}, {Table: "core", Code: "juice of limes"}})
	require.Error(t, err)
	assert.Equal(t, `there is no food core:lemn-juice (perhaps core:lemon-juice "Lemon juice", core:lime-juice "Lime juice")
there is no food core:juice of limes (perhaps core:lime-juice "Lime juice")`, err.Error())

	_, err = db.Food(t.Context(), food.ID{Table: "ciqual", Code: "1"})
	assert.ErrorIs(t, err, store.ErrNoTable)
	assert.Equal(t, fail.NeedsTable, fail.ExitCode(err))
	assert.Contains(t, err.Error(), "sipsum table load")
	_, err = db.Columns(t.Context(), "ciqual")
	assert.Equal(t, fail.NeedsTable, fail.ExitCode(err))
}

func TestByName(t *testing.T) {
	db := fresh(t)
	load(t, db, "own2", "1", plain("own2", "a", "Sugar"), plain("own2", "b", "Honey", "Miel"))
	load(t, db, "core", "1", plain("core", "x", "Sugar"), plain("core", "y", "Twin"), plain("core", "z", "Twin"), plain("core", "w", "Same", "Same"), plain("core", "9", "Nine"))
	for _, c := range []struct {
		name   string
		tables []string
		want   string
	}{
		{"Sugar", []string{"core", "own2"}, "core:x"}, {"Sugar", []string{"own2", "core"}, "own2:a"}, {"Miel", []string{"core", "own2"}, "own2:b"},
		{"sugar", []string{"core"}, "core:x"}, {"X", []string{"core"}, "core:x"}, {"sugar", []string{"core", "own2"}, "core:x"}, {"Sug", []string{"core"}, ""}, {"9", []string{"core"}, ""}, {"Sugar", []string{"none"}, ""}, {"Sugar", nil, ""}, {"Same", []string{"core"}, "core:w"},
	} {
		id, found, err := db.ByName(t.Context(), c.name, c.tables)
		require.NoError(t, err)
		assert.Equal(t, c.want != "", found, "%v", c)
		if found {
			assert.Equal(t, c.want, id.String())
		}
	}
	_, _, err := db.ByName(t.Context(), "Twin", []string{"core"})
	require.Error(t, err)
	assert.Equal(t, `"Twin" is the name of 2 foods (write one of core:y, core:z)`, err.Error())
	load(t, db, "other", "1", plain("other", "a", "Gin"), plain("other", "gin", "Gin, dry"))
	_, _, err = db.ByName(t.Context(), "GIN", []string{"other"})
	assert.EqualError(t, err, `"GIN" is the name of 2 foods (write one of other:a, other:gin)`, "a name and a code that read the same")
	id, _, err := db.ByName(t.Context(), "Gin", []string{"other"})
	require.NoError(t, err)
	assert.Equal(t, "other:a", id.String(), "an exact name is meant")
}

func TestErrorsOfAnInterruptedLookup(t *testing.T) {
	db := fresh(t)
	load(t, db, "core", "1", plain("core", "x", "Sugar"))
	ctx, stop := context.WithCancel(t.Context())
	stop()
	_, err := db.Food(ctx, food.ID{Table: "core", Code: "x"})
	assert.Equal(t, fail.Interrupted, fail.ExitCode(err))
	assert.True(t, errors.Is(err, context.Canceled))
	_, err = db.Find(ctx, store.Query{Words: "sugar"})
	assert.Equal(t, fail.Interrupted, fail.ExitCode(err))
}
