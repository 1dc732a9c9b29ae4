package fdc

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
	"sipsum/internal/food"
)

const trimmed = "../../../testdata/tables/fdc"

// TestDrawersKeepTheOrder compares with a plain list for each food, with and
// without the temporary file.
func TestDrawersKeepTheOrder(t *testing.T) {
	const foods = 3*perDrawer + 5
	for _, most := range []int{1 << 30, 1000, 0} {
		d := newDrawers(foods, most)
		want := map[uint32][]string{}
		random := rand.New(rand.NewPCG(1, uint64(most)))
		for n := range 20_000 {
			place := uint32(random.IntN(foods))
			text := fmt.Sprintf("%0*d", random.IntN(300), n)
			want[place] = append(want[place], fmt.Sprint(n%5, text))
			require.NoError(t, d.put(place, byte(n%5), []byte(text)))
		}
		var c contents
		for place := range uint32(foods) {
			if place%perDrawer == 0 {
				require.NoError(t, d.take(int(place/perDrawer), &c))
			}
			var have []string
			for s := range c.of(place) {
				have = append(have, fmt.Sprint(s.kind, string(s.body)))
			}
			require.Equal(t, want[place], have, "food %d, %d held", place, most)
		}
		d.close()
	}
}

// TestThroughTheFile reads the same release with and without the temporary
// file, and looks whether anything is left behind.
func TestThroughTheFile(t *testing.T) {
	temp := t.TempDir()
	t.Setenv("TMPDIR", temp)
	all := func(held int) (texts []string) {
		release, err := open(t.Context(), os.DirFS(trimmed), trimmed, "", held)
		require.NoError(t, err)
		for f, err := range release.Foods {
			require.NoError(t, err)
			texts = append(texts, fmt.Sprintf("%+v", *f))
		}
		for range release.Foods {
			break
		}
		return texts
	}
	memory := all(maxHeld)
	require.Len(t, memory, 10)
	assert.Equal(t, memory, all(0))
	assert.Equal(t, memory, all(500))
	left, err := os.ReadDir(temp)
	require.NoError(t, err)
	assert.Empty(t, left)
}

func TestNoRoomForTheFile(t *testing.T) {
	t.Setenv("TMPDIR", filepath.Join(t.TempDir(), "nowhere"))
	release, err := open(t.Context(), os.DirFS(trimmed), trimmed, "", 0)
	require.NoError(t, err)
	for _, err = range release.Foods {
	}
	assert.ErrorContains(t, err, "temporary file")
	assert.Equal(t, fail.Failed, fail.ExitCode(err))
}

func TestPackedValues(t *testing.T) {
	values := []value{
		{column: 3, amount: 0.5, low: food.None, high: food.None, limit: food.None, id: 1 << 40, line: 900},
		{column: 400, derivation: 77, points: 1_000_000, amount: 1e-300, low: 0, high: 1e300, limit: food.None, line: 901, footnote: "é"},
		{column: 0, limit: 2.5, low: food.None, high: food.None, id: 7, line: 1 << 40},
	}
	var p packer
	for _, v := range values {
		p.put(&v)
	}
	var have []value
	require.NoError(t, unpack(p.bytes, func(v *value) error {
		have = append(have, *v)
		return nil
	}))
	assert.Equal(t, fmt.Sprintf("%+v", values), fmt.Sprintf("%+v", have), "as text: NaN is never equal")
}
