package drink_test

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// doubling gives components that each use the one before twice.
func doubling(components int) string {
	text := head + "components:\n  c0: {ingredients: [1 g a]}\n"
	for i := 1; i < components; i++ {
		text += fmt.Sprintf("  c%d: {ingredients: [1 g c%d, 1 g c%d]}\n", i, i-1, i-1)
	}
	return text
}

func TestComponentsThatUnfoldToMillionsAreRefused(t *testing.T) {
	const unfolded = "written out, every component replaced by its ingredients, it comes to more than 100 ingredient lines"
	for name, c := range map[string]struct {
		text, at string
	}{
		"used":     {doubling(40) + "build: [1 g c39]\n", "11:3"},
		"not used": {doubling(40) + "build: [1 g a]\n", "11:3"}, // its foods are looked up all the same
		"together": {doubling(7) + "build: [1 g c6, 1 g c6]\n", "11:17"},
	} {
		d, faults := drink.Parse("f.yaml", []byte(c.text), nil)
		err := faults.Err(fail.Wrong)
		require.Error(t, err, name)
		assert.Equal(t, 1, faults.Len(), name)
		assert.Contains(t, err.Error(), c.at+": "+unfolded, name)
		assert.True(t, d.TooLarge, name)
		assert.Empty(t, d.Build, "%s: there is nothing left to walk", name)
		assert.Empty(t, d.Components, name)
	}
	assert.Empty(t, faultsOf(t, doubling(7)+"build: [1 g c6]\n"), "64 lines are within the limit")
}

func TestADrinkOfTooMuchWorkIsRefused(t *testing.T) {
	big := head + "build:\n" + strings.Repeat("  - 1 g a\n", 90)
	assert.Empty(t, faultsOf(t, big))
	for name, text := range map[string]string{
		"steps":    big + "finish:\n" + strings.Repeat("  - chill: {melt: 1 g}\n", 200),
		"readings": head + "components:\n  c:\n    ingredients: [1 g a]\n    steps:\n" + strings.Repeat("      - measured: {mass: 1 g}\n", 50) + "build: [1 g c]\n",
		"chain":    chain(60),
	} {
		got := faultsOf(t, text)
		require.Len(t, got, 1, name)
		assert.Contains(t, got[0], "the drink is too large to be calculated with 1000 draws (use fewer lines, steps or readings", name)
	}
	for says, text := range map[string]string{
		"with 90 ingredient lines written out, 0 components, 200 steps and 0 readings the": big + "finish:\n" + strings.Repeat("  - chill: {melt: 1 g}\n", 200),
		// the reading after the last step is a reading like any other, and no step
		"with 1 ingredient lines written out, 1 components, 3 steps and 51 readings the": head + "components:\n  c:\n    ingredients: [1 g a]\n    steps:\n" +
			strings.Repeat("      - measured: {mass: 1 g}\n", 50) + strings.Repeat("      - chill: {melt: 1 g}\n", 3) + "    measured: {ph: 3}\nbuild: [1 g c]\n",
	} {
		assert.Contains(t, faultsOf(t, text)[0], says)
	}
	d, faults := drink.Parse("f.yaml", []byte(big), nil)
	require.Zero(t, faults.Len())
	require.NoError(t, d.Fits(1000))
	assert.ErrorContains(t, d.Fits(2000), "too large to be calculated with 2000 draws (use at most --draws 1666)")
	assert.NoError(t, d.Fits(1666))
	d, _ = drink.Parse("f.yaml", []byte(big+"finish:\n"+strings.Repeat("  - chill: {melt: 1 g}\n", 200)), nil)
	for _, draws := range []int{200, 1000, 2000} {
		assert.ErrorContains(t, d.Fits(draws), "(use fewer lines, steps or readings", "no number of draws helps")
	}
}

// chain makes components that each use the one before and one thing more: few
// lines in the drink, many in its pots.
func chain(components int) string {
	text := head + "components:\n  c0: {ingredients: [1 g a]}\n"
	for i := 1; i < components; i++ {
		text += fmt.Sprintf("  c%d: {ingredients: [1 g c%d, 1 g a]}\n", i, i-1)
	}
	return text + fmt.Sprintf("build: [1 g c%d]\n", components-1)
}

// The drinks that sipsum brings along and those of its tests are less than half
// of what the limits allow.
func TestTheLimitsAreFarFromHonestDrinks(t *testing.T) {
	files := map[string][]byte{}
	for _, folder := range []fs.FS{data.FS, os.DirFS("../../testdata/drinks")} {
		for _, pattern := range []string{"demo/*.yaml", "*.drink.yaml", "designs/*.yaml"} {
			names, err := fs.Glob(folder, pattern)
			require.NoError(t, err)
			for _, name := range names {
				text, err := fs.ReadFile(folder, name)
				require.NoError(t, err)
				files[name] = text
			}
		}
	}
	require.Greater(t, len(files), 8)
	for name, text := range files {
		d, _ := drink.Parse(name, text, func(pantry string) ([]byte, error) {
			return os.ReadFile(filepath.Join("../../testdata/drinks", pantry))
		})
		draws := 2000
		if name == "every-key.drink.yaml" { // every step and reading at once is no honest drink
			draws = 1800
		}
		assert.NoError(t, d.Fits(draws), name)
	}
}

func TestPantriesAreNotLargeTogether(t *testing.T) {
	pantry := []byte("foods:\n" + strings.Repeat(" ", drink.MostBytes()/2) + "\n")
	_, faults := drink.Parse("f.yaml", []byte("use: [a, b]\n"+head+"build: [1 g a]\n"), func(string) ([]byte, error) { return pantry, nil })
	assert.ErrorContains(t, faults.Err(fail.Wrong), "f.yaml:1:10: the shelves have more than 262144 bytes together")
}
