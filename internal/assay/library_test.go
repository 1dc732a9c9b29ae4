package assay_test

import (
	"context"
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/core"
	"sipsum/internal/tables/sr"
	"sipsum/internal/tables/table"
)

// library is foods in memory.
type library map[food.ID]*food.Food

func (l library) read(t testing.TB, format table.Format, path string) library {
	t.Helper()
	release, err := format.Open(context.Background(), path, "")
	require.NoError(t, err)
	for f, err := range release.Foods {
		require.NoError(t, err)
		l[f.ID] = f
	}
	return l
}

// coreLibrary is the core table.
func coreLibrary(t testing.TB) library { return library{}.read(t, core.Format, "") }

// srLibrary is the rows of SR28 under testdata/sr28.
func srLibrary(t testing.TB) library { return library{}.read(t, sr.Format, "../../testdata/sr28") }

func (l library) Food(_ context.Context, id food.ID) (*food.Food, error) {
	if f, ok := l[id]; ok {
		return f, nil
	}
	return nil, fail.New(fail.Wrong, "no food "+id.String(), "")
}

func (l library) Named(_ context.Context, name string) (food.ID, bool, error) {
	for id, f := range l {
		if f.Name() == name {
			return id, true, nil
		}
	}
	return food.ID{}, false, nil
}

func (l library) Near(context.Context, string) []string { return nil }

// run assays the text of a drink file.
func run(t testing.TB, lib library, text string, draws int, wanted ...constituent.ID) *assay.Assay {
	t.Helper()
	d, faults := drink.Parse("test", []byte(text), nil)
	a, err := assay.Run(context.Background(), d, faults, lib, assay.Options{Draws: draws, Seed: 1, Wanted: wanted, Whole: true})
	require.NoError(t, err)
	return a
}

// fileOf reads a file of the repository.
func fileOf(t testing.TB, path string) []byte {
	t.Helper()
	text, err := os.ReadFile("../../" + path)
	require.NoError(t, err)
	return text
}

// figure gives a figure that must be there.
func figure(t testing.TB, list assay.Composition, id constituent.ID) assay.Figure {
	t.Helper()
	f, ok := list.Find(id)
	require.True(t, ok, "%s is not reported", id)
	return f
}

// withoutPH gives the library without any published pH of its foods: compositions alone.
func withoutPH(lib library) library {
	bare := library{}
	for id, f := range lib {
		copied := *f
		copied.Values = slices.DeleteFunc(slices.Clone(f.Values), func(v food.Value) bool {
			return v.Constituent == "PH" || v.Constituent == "pH-brewed"
		})
		bare[id] = &copied
	}
	return bare
}
