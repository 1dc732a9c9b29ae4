package store_test

import (
	"context"
	"fmt"
	"iter"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/store"
)

// whole checks that the table big is one whole release of n foods with as many
// values each, all of one load, and gives that load's mark.
func whole(tb testing.TB, db *store.DB, n, values int) float64 {
	tb.Helper()
	info, found, err := db.Table(tb.Context(), "big")
	require.NoError(tb, err)
	require.True(tb, found)
	require.Equal(tb, [2]int{n, n * values}, [2]int{info.Foods, info.Values})
	var seen struct {
		Foods, Amounts, Names int
		Least, Most           float64
	}
	require.NoError(tb, db.Handle().Get(&seen, `
		SELECT count(DISTINCT f.key) AS foods, count(*) AS amounts, min(v.amount) AS least, max(v.amount) AS most,
			(SELECT count(*) FROM food_name n JOIN food f ON f.key = n.food JOIN release r ON r.key = f.release WHERE r.current = 1) AS names
		FROM release r JOIN food f ON f.release = r.key JOIN value v ON v.food = f.key WHERE r.current = 1`))
	require.Equal(tb, [3]int{n, n * values, n}, [3]int{seen.Foods, seen.Amounts, seen.Names})
	require.Equal(tb, seen.Least, seen.Most, "values of two loads are mixed")
	return seen.Least
}

// nothingLeft checks that no row of an earlier release is in the file.
func nothingLeft(tb testing.TB, db *store.DB) {
	tb.Helper()
	for _, query := range []string{
		"SELECT count(*) FROM release WHERE current = 0",
		"SELECT count(*) FROM food WHERE release NOT IN (SELECT key FROM release WHERE current = 1)",
		"SELECT count(*) FROM ranked WHERE food NOT IN (SELECT key FROM food)",
		"SELECT count(*) FROM stratum WHERE release NOT IN (SELECT key FROM release)",
		"SELECT count(*) FROM ranked WHERE stratum NOT IN (SELECT key FROM stratum)",
		"SELECT abs((SELECT count(*) FROM food_name) - (SELECT count(*) FROM called))",
		"SELECT count(*) FROM vocabulary WHERE release NOT IN (SELECT key FROM release)",
		"SELECT count(*) FROM shared_text WHERE release NOT IN (SELECT key FROM release)",
		"SELECT count(*) FROM food_name WHERE food NOT IN (SELECT key FROM food)",
		"SELECT abs((SELECT count(*) FROM food_name) - (SELECT count(*) FROM food_name_index))",
		"SELECT count(*) FROM source WHERE release NOT IN (SELECT key FROM release)",
		"SELECT count(*) FROM table_column WHERE release NOT IN (SELECT key FROM release)",
	} {
		var n int
		require.NoError(tb, db.Handle().Get(&n, query))
		require.Zero(tb, n, query)
	}
}

func TestTheSameContentIsNotWrittenAgain(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x.db")
	db := open(t, path)
	in := store.Incoming{Table: table("big", "aa"), Foods: many(20, 3, 1)}
	_, err := db.Load(t.Context(), in, nil)
	require.NoError(t, err)
	bytes := func() [2]string {
		main, err := os.ReadFile(path)
		require.NoError(t, err)
		wal, err := os.ReadFile(path + "-wal")
		require.NoError(t, err)
		return [2]string{string(main), string(wal)}
	}
	before := bytes()
	in.Foods = func(func(*food.Food, error) bool) { t.Error("the foods were read again") }
	done, err := db.Load(t.Context(), in, nil)
	require.NoError(t, err)
	assert.Equal(t, store.Loaded{Foods: 20, Values: 60, Already: true}, done)
	assert.True(t, before == bytes(), "the file was written to")

	in.Foods, in.Force = many(20, 3, 2), true
	done, err = db.Load(t.Context(), in, nil)
	require.NoError(t, err)
	assert.Equal(t, store.Loaded{Foods: 20, Values: 60}, done)
	assert.Equal(t, 2.0, whole(t, db, 20, 3))

	in.Foods, in.Force, in.Table.Hash = many(20, 3, 3), false, "bb"
	done, err = db.Load(t.Context(), in, nil)
	require.NoError(t, err)
	assert.False(t, done.Already)
	assert.Equal(t, 3.0, whole(t, db, 20, 3))
	nothingLeft(t, db)
}

func TestAFailedLoadLeavesThePreviousRelease(t *testing.T) {
	db := fresh(t)
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	_, err := db.Load(ctx, store.Incoming{Table: table("big", "aa"), Foods: many(300, 3, 1)}, nil)
	require.NoError(t, err)

	broken := fail.At(fail.Wrong, fail.Place{File: "NUT_DATA.txt", Line: 7, Col: 3}, "bad number", "mend it")
	after := func(n int, then func(yield func(*food.Food, error) bool)) iter.Seq2[*food.Food, error] {
		return func(yield func(*food.Food, error) bool) {
			for f, err := range many(n, 3, 2) {
				if !yield(f, err) {
					return
				}
			}
			then(yield)
		}
	}
	one := func(f *food.Food) func(func(*food.Food, error) bool) {
		return func(yield func(*food.Food, error) bool) { yield(f, nil) }
	}
	double := plain("big", "x")
	double.Values = append(double.Values, double.Values[0])
	for _, c := range []struct {
		name  string
		foods iter.Seq2[*food.Food, error]
		exit  fail.Code
		text  string
	}{
		{"fault in the files", after(250, func(yield func(*food.Food, error) bool) { yield(nil, broken) }), fail.Wrong, "NUT_DATA.txt:7:3: bad number (mend it)"},
		{"fault in the first food", after(0, func(yield func(*food.Food, error) bool) { yield(nil, broken) }), fail.Wrong, "NUT_DATA.txt:7:3: bad number (mend it)"},
		{"code twice", after(250, one(plain("big", "00003"))), fail.Wrong, "the food big:00003 appears twice in the table"},
		{"constituent twice", after(250, one(double)), fail.Wrong, "the food big:x has two values for WATER"},
		{"no foods", after(0, func(func(*food.Food, error) bool) {}), fail.Wrong, "the table big has no foods (see whether the path holds the published files)"},
		{"stopped by the user", after(250, func(yield func(*food.Food, error) bool) { stop(); yield(plain("big", "x"), nil) }), fail.Interrupted, ": context canceled"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := db.Load(ctx, store.Incoming{Table: table("big", "bb"), Foods: c.foods}, nil)
			require.Error(t, err)
			assert.True(t, strings.HasSuffix(err.Error(), c.text), "%v", err)
			assert.Equal(t, c.exit, fail.ExitCode(err))
			assert.Equal(t, 1.0, whole(t, db, 300, 3))
			nothingLeft(t, db)
		})
	}
	_, err = db.Load(t.Context(), store.Incoming{Table: table("big", "bb"), Foods: many(300, 3, 2)}, nil)
	require.NoError(t, err)
	assert.Equal(t, 2.0, whole(t, db, 300, 3))
}

// A reader's stream may end quietly when the context does.
func TestAStreamCutShortByTheUserIsNotARelease(t *testing.T) {
	db := fresh(t)
	ctx, stop := context.WithCancel(t.Context())
	_, err := db.Load(ctx, store.Incoming{Table: table("big", "aa"), Foods: func(yield func(*food.Food, error) bool) {
		yield(plain("big", "x"), nil)
		stop()
	}}, nil)
	assert.Equal(t, fail.Interrupted, fail.ExitCode(err))
	_, found, err := db.Table(t.Context(), "big")
	require.NoError(t, err)
	assert.False(t, found)
}

func TestAFullDatabaseLeavesThePreviousRelease(t *testing.T) {
	db := fresh(t)
	db.Handle().SetMaxOpenConns(1) // max_page_count belongs to a connection
	_, err := db.Load(t.Context(), store.Incoming{Table: table("big", "aa"), Foods: many(300, 3, 1)}, nil)
	require.NoError(t, err)
	var pages int
	require.NoError(t, db.Handle().Get(&pages, "PRAGMA page_count"))
	require.NoError(t, db.Handle().Get(&pages, fmt.Sprintf("PRAGMA max_page_count = %d", pages+20)))
	_, err = db.Load(t.Context(), store.Incoming{Table: table("big", "bb"), Foods: many(3000, 30, 2)}, nil)
	require.Error(t, err)
	assert.Equal(t, fail.Failed, fail.ExitCode(err))
	assert.Contains(t, err.Error(), "the disk is full")
	assert.Equal(t, 1.0, whole(t, db, 300, 3))
	nothingLeft(t, db)
}

func TestReadersDuringLoadsSeeWholeFoods(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x.db")
	db, other := open(t, path), open(t, path)
	n, values := 2*store.SweepFoods, 20
	_, err := db.Load(t.Context(), store.Incoming{Table: table("big", "0"), Foods: many(n, values, 0)}, nil)
	require.NoError(t, err)
	done := make(chan struct{})
	var readers sync.WaitGroup
	for _, from := range []*store.DB{db, other} {
		readers.Go(func() {
			reads, last := 0, 0.0
			for {
				select {
				case <-done:
					assert.Positive(t, reads)
					return
				default:
				}
				foods, err := from.Foods(t.Context(), []food.ID{{Table: "big", Code: "7"}, {Table: "big", Code: fmt.Sprintf("%05d", n-1)}})
				if !assert.NoError(t, err) {
					return
				}
				mark := foods[0].Values[0].Amount
				for _, f := range foods {
					assert.Len(t, f.Values, values)
					assert.Len(t, f.Names, 1)
					for _, v := range f.Values {
						if v.Amount != mark {
							t.Errorf("a value of load %v beside one of load %v", v.Amount, mark)
						}
					}
				}
				assert.GreaterOrEqual(t, mark, last, "an older release came back")
				last = mark
				hits, err := from.Find(t.Context(), store.Query{Words: "invented food 7", Limit: 2 * n})
				assert.NoError(t, err)
				for _, h := range hits {
					assert.False(t, h.Near)
				}
				assert.NotEmpty(t, hits)
				reads++
			}
		})
	}
	for i := range 4 {
		_, err := db.Load(t.Context(), store.Incoming{Table: table("big", fmt.Sprint(i+1)), Foods: many(n, values, float64(i+1))}, nil)
		require.NoError(t, err)
	}
	close(done)
	readers.Wait()
	assert.Equal(t, 4.0, whole(t, db, n, values))
	nothingLeft(t, db)
}

func TestProgressIsToldUpToTheEnd(t *testing.T) {
	db := fresh(t)
	n := 2*store.ProgressEvery + 5
	var told [][2]int
	_, err := db.Load(t.Context(), store.Incoming{Table: table("big", "aa"), Foods: many(n, 2, 1)}, func(foods, values int) {
		told = append(told, [2]int{foods, values})
	})
	require.NoError(t, err)
	assert.Equal(t, [][2]int{{n - 105, 2 * (n - 105)}, {n - 5, 2 * (n - 5)}, {n, 2 * n}}, told)
}

func TestRemove(t *testing.T) {
	db := fresh(t)
	load(t, db, "core", "1", plain("core", "x", "Sugar"))
	load(t, db, "zz", "1", plain("zz", "x", "Sugar"))
	load(t, db, "sr", "1", plain("sr", "x", "Sugar"))
	ids := func() (ids []string) {
		tables, err := db.Tables(t.Context())
		require.NoError(t, err)
		for _, i := range tables {
			ids = append(ids, i.ID)
		}
		return ids
	}
	assert.Equal(t, []string{"core", "sr", "zz"}, ids())
	require.NoError(t, db.Remove(t.Context(), "sr"))
	assert.Equal(t, []string{"core", "zz"}, ids())
	nothingLeft(t, db)
	err := db.Remove(t.Context(), "sr")
	assert.ErrorIs(t, err, store.ErrNoTable)
	assert.Equal(t, fail.Wrong, fail.ExitCode(err))
}
