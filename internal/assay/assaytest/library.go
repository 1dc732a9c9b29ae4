package assaytest

import (
	"context"
	"os"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/core"
	"sipsum/internal/tables/sr"
	"sipsum/internal/tables/table"
)

// Library is foods in memory.
type Library map[food.ID]*food.Food

// Core is the core table: read once, and everybody's own, to be changed at will.
func Core(t testing.TB) Library {
	t.Helper()
	all, err := coreTable()
	require.NoError(t, err)
	own := make(Library, len(all))
	for _, f := range all {
		copied := *f
		copied.Values = slices.Clone(f.Values)
		own[f.ID] = &copied
	}
	return own
}

var coreTable = sync.OnceValues(func() ([]*food.Food, error) {
	release, err := core.Format.Open(context.Background(), "", "")
	if err != nil {
		return nil, err
	}
	var all []*food.Food
	for f, err := range release.Foods {
		if err != nil {
			return nil, err
		}
		all = append(all, f)
	}
	return all, nil
})

// SR28 is the rows of SR28 under testdata/sr28.
func SR28(t testing.TB) Library { return Library{}.Read(t, sr.Format, "../../testdata/sr28") }

// Read adds the foods of a table.
func (l Library) Read(t testing.TB, format table.Format, path string) Library {
	t.Helper()
	release, err := format.Open(context.Background(), path, "")
	require.NoError(t, err)
	for f, err := range release.Foods {
		require.NoError(t, err)
		l[f.ID] = f
	}
	return l
}

// Food gives a food, or says that there is none.
func (l Library) Food(_ context.Context, id food.ID) (*food.Food, error) {
	if f, ok := l[id]; ok {
		return f, nil
	}
	return nil, fail.New(fail.Wrong, "no food "+id.String(), "")
}

// Named gives the food of a name.
func (l Library) Named(_ context.Context, name string) (food.ID, bool, error) {
	for id, f := range l {
		if f.Name() == name {
			return id, true, nil
		}
	}
	return food.ID{}, false, nil
}

// Near suggests nothing.
func (l Library) Near(context.Context, string) []string { return nil }

// FileOf reads a file of the repository, for a test of a package right below internal.
func FileOf(t testing.TB, path string) []byte {
	t.Helper()
	text, err := os.ReadFile("../../" + path)
	require.NoError(t, err)
	return text
}
