package contrast_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/contrast"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/recipe"
	"sipsum/internal/sheet"
)

const draws = 200

// found reads a drink and finds its foods; shelves stand in a folder.
func found(t testing.TB, foods assaytest.Library, text, folder string) *recipe.Recipe {
	t.Helper()
	d, faults := drink.Parse("test.drink.yaml", []byte(text), func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(folder, name)) })
	d.Targets, d.Vary = nil, nil // are not computed yet
	r, err := recipe.Find(t.Context(), d, faults, foods)
	require.NoError(t, err)
	return r
}

// compared sets a drink, b, against another, as the command does.
func compared(t testing.TB, a, b *recipe.Recipe) *contrast.Contrast {
	t.Helper()
	heardA, err := contrast.Written(t.Context(), a)
	require.NoError(t, err)
	heardB, err := contrast.Written(t.Context(), b)
	require.NoError(t, err)
	ofA, ofB := contrast.Streams(heardA, heardB)
	ids := sheet.ComparedFigures(a.Drink, b.Drink)
	var both [2]*assay.Assay
	for i, r := range []*recipe.Recipe{a, b} {
		p := assay.Prepare(r, estimate.Ensemble{Seed: 1, N: draws + 1})
		if p.Follow(ofA); i == 1 {
			p.Follow(ofB)
		}
		both[i], err = p.Run(t.Context(), nil, assay.Want{Figures: ids, Intervals: true, Chemistry: true, Draws: true})
		require.NoError(t, err)
	}
	return contrast.Of(both[0], both[1], ids)
}

// texts compares two drink files of foods of the core table.
func texts(t testing.TB, foods assaytest.Library, a, b string) *contrast.Contrast {
	t.Helper()
	return compared(t, found(t, foods, a, "."), found(t, foods, b, "."))
}

// drinks are the texts of the demo drinks and of those to copy, by name, each with its folder.
func drinks(t testing.TB) map[string][2]string {
	t.Helper()
	all := map[string][2]string{}
	names, err := fs.Glob(data.FS, "demo/*.yaml")
	require.NoError(t, err)
	for _, name := range names {
		text, err := data.FS.ReadFile(name)
		require.NoError(t, err)
		all[name] = [2]string{string(text), "."}
	}
	files, err := filepath.Glob("../../testdata/drinks/*/*.drink.yaml")
	require.NoError(t, err)
	for _, name := range append(files, "../../testdata/drinks/copper-orchard.drink.yaml") {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		all[name] = [2]string{string(text), filepath.Dir(name)}
	}
	require.Greater(t, len(all), 10)
	return all
}

// differences lists every difference of a contrast by what it is of.
func differences(c *contrast.Contrast) map[string]contrast.Difference {
	all := map[string]contrast.Difference{"mass": c.Mass.Difference, "volume": c.Volume.Difference, "sweet": c.Sweet.Index, "sour": c.Sour.Index}
	for _, f := range c.Figures {
		all[string(f.Constituent.ID)] = f.Difference
	}
	for _, l := range c.Liquids {
		all[string(l.Kind)] = l.Difference
	}
	return all
}

func figure(t testing.TB, c *contrast.Contrast, id constituent.ID) contrast.Figure {
	t.Helper()
	f, ok := c.Find(id)
	require.True(t, ok, id)
	return f
}

func liquid(t testing.TB, c *contrast.Contrast, kind contrast.Kind) contrast.Liquid {
	t.Helper()
	for _, l := range c.Liquids {
		if l.Kind == kind {
			return l
		}
	}
	require.Fail(t, "no such figure", kind)
	return contrast.Liquid{}
}

func replaced(t testing.TB, text, old, by string) string {
	t.Helper()
	require.Contains(t, text, old)
	return strings.Replace(text, old, by, 1)
}
