package store_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/food"
	"sipsum/internal/store"
)

// The size of the benchmark's table, 200,000 values: about a third of SR28.
const (
	benchFoods  = 2500
	benchValues = 80
)

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		db, err := store.Open(b.Context(), filepath.Join(b.TempDir(), "x.db"), store.Options{})
		require.NoError(b, err)
		_, err = db.Load(b.Context(), store.Incoming{Table: table("big", "aa"), Foods: many(benchFoods, benchValues, 1)}, nil)
		require.NoError(b, err)
		require.NoError(b, db.Close())
	}
	b.ReportMetric(float64(b.N)*benchFoods*benchValues/b.Elapsed().Seconds(), "rows/s")
}

func BenchmarkLookup(b *testing.B) {
	path := filepath.Join(b.TempDir(), "x.db")
	db, err := store.Open(b.Context(), path, store.Options{})
	require.NoError(b, err)
	defer db.Close()
	_, err = db.Load(b.Context(), store.Incoming{Table: table("big", "aa"), Foods: many(benchFoods, benchValues, 1)}, nil)
	require.NoError(b, err)
	b.Run("ten foods", func(b *testing.B) {
		ids := make([]food.ID, 10)
		for i := range ids {
			ids[i] = food.ID{Table: "big", Code: fmt.Sprint(i * 200)}
		}
		for b.Loop() {
			_, err := db.Foods(b.Context(), ids)
			require.NoError(b, err)
		}
	})
	b.Run("find", func(b *testing.B) {
		for b.Loop() {
			hits, err := db.Find(b.Context(), store.Query{Words: "invented food 12"})
			require.NoError(b, err)
			require.NotEmpty(b, hits)
		}
	})
	b.Run("open and close", func(b *testing.B) {
		for b.Loop() {
			again, err := store.Open(b.Context(), path, store.Options{})
			require.NoError(b, err)
			require.NoError(b, again.Close())
		}
	})
}

// BenchmarkFind searches the database that SIPSUM_BENCH_DB names, such as one of millions of foods
// that scripts/benchload has made up.
func BenchmarkFind(b *testing.B) {
	path := os.Getenv("SIPSUM_BENCH_DB")
	if path == "" {
		b.Skip("SIPSUM_BENCH_DB names no database")
	}
	db, err := store.Open(b.Context(), path, store.Options{ReadOnly: true})
	require.NoError(b, err)
	defer db.Close()
	for _, words := range []string{"lemon", "cherry syrup", "sour cherry syrup", "lemno juice", "xylophone"} {
		b.Run(words, func(b *testing.B) {
			for b.Loop() {
				_, err := db.Find(b.Context(), store.Query{Words: words})
				require.NoError(b, err)
			}
		})
	}
}
