package tablestest

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// Published gives a place among the published tables, which are not part of
// sipsum. Without them the test is skipped.
func Published(t testing.TB, names ...string) string {
	t.Helper()
	shared := os.Getenv("SIPSUM_SHARED")
	if shared == "" {
		t.Skip("SIPSUM_SHARED is not set: the published files are needed")
	}
	return filepath.Join(append([]string{shared, "tables"}, names...)...)
}

// Bytes reads a file that must be there.
func Bytes(t testing.TB, place ...string) []byte {
	t.Helper()
	content, err := os.ReadFile(filepath.Join(place...))
	require.NoError(t, err)
	return content
}

// Open opens a release that must be whole, under the format's own name.
func Open(t testing.TB, format table.Format, path string) *table.Release {
	t.Helper()
	return openAs(t, format, path, "")
}

func openAs(t testing.TB, format table.Format, path, id string) *table.Release {
	t.Helper()
	release, err := format.Open(t.Context(), path, id)
	require.NoError(t, err)
	return release
}

// Read reads a release to its first error, which must end the stream. The foods
// are those before it, in the publisher's order.
func Read(t testing.TB, format table.Format, path string) (foods []*food.Food, err error) {
	t.Helper()
	release, err := format.Open(t.Context(), path, "")
	if err != nil {
		return nil, err
	}
	for f, e := range release.Foods {
		require.NoError(t, err, "the stream goes on after an error")
		if err = e; err == nil {
			foods = append(foods, f)
		}
	}
	return foods, err
}

// Foods reads a whole release: its foods by code.
func Foods(t testing.TB, format table.Format, path string) map[string]*food.Food {
	t.Helper()
	all, err := Read(t, format, path)
	require.NoError(t, err)
	foods := map[string]*food.Food{}
	for _, f := range all {
		foods[f.ID.Code] = f
	}
	return foods
}

// Value gives the value that a food must have of a constituent.
func Value(t testing.TB, f *food.Food, tag constituent.ID) food.Value {
	t.Helper()
	v, ok := f.Value(tag)
	require.True(t, ok, "%s has no %s", f.ID, tag)
	return v
}

// Bench reads a release over and over, and gives how many values that were.
func Bench(b *testing.B, format table.Format, path string) (values int) {
	b.Helper()
	for b.Loop() {
		for f, err := range Open(b, format, path).Foods {
			if err != nil {
				b.Fatal(err)
			}
			values += len(f.Values)
		}
	}
	b.ReportMetric(float64(values)/b.Elapsed().Seconds(), "values/s")
	return values
}
