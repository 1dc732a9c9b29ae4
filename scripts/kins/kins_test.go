package main

import (
	"bytes"
	"cmp"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tables gives the folder of the published tables; without them a test is skipped.
func tables(t *testing.T) string {
	folder := filepath.Join(cmp.Or(os.Getenv("SIPSUM_SHARED"), filepath.Join("..", "..", "..", "shared")), "tables")
	if _, err := os.Stat(filepath.Join(folder, "afcd2")); err != nil {
		t.Skip("no published tables in " + folder)
	}
	return folder
}

var data = filepath.Join("..", "..", "data")

// The shares are what the rows give that the table of kins names.
func TestSharesAreThoseOfTheRows(t *testing.T) {
	content, err := generate(tables(t), data)
	require.NoError(t, err)
	old, err := os.ReadFile(filepath.Join(data, "kin_shares.csv"))
	require.NoError(t, err)
	assert.True(t, bytes.Equal(old, content), "run: go run ./scripts/kins --tables FOLDER")
}

// A row of a kin that is left out lies within what the others say of it: of the shares of a
// tenth and more at least 85 of 100 within the 90 % interval, rounding counted, and half of
// the intervals are within ± 45 % (our own bounds: a 90 % interval should hold 90, and 200
// cases tell 85 from it).
func TestARowLeftOutIsHeldByItsKin(t *testing.T) {
	const atLeast, least, widest = 0.1, 0.85, 0.45
	rows, err := rowsOf(tables(t), data)
	require.NoError(t, err)
	kins, err := kinsOf(filepath.Join(data, "kins.csv"), rows)
	require.NoError(t, err)
	held, all := 0, 0
	var halves []float64
	for i, k := range kins {
		if len(k.rows) < many {
			continue
		}
		in, of := 0, 0
		var own []float64
		for j, out := range k.rows {
			others := slices.Clone(kins)
			others[i] = k.without(j)
			for _, s := range others[i].shares(widths(others)[i]) {
				_, low, high, looked := out.shareOf(s.id)
				if !looked || s.mean < atLeast {
					continue
				}
				of++
				own = append(own, (s.high-s.low)/2/s.mean)
				if high >= s.low && low <= s.high {
					in++
				} else {
					t.Logf("%s without %s: %s %.2f to %.2f, read as %.2f to %.2f", k.name, k.names[j], s.id, s.low, s.high, low, high)
				}
			}
		}
		slices.Sort(own)
		if of > 0 {
			t.Logf("%-34s %2d rows: %3d of %3d held, median half-width %2.0f %%", k.name, len(k.rows), in, of, 100*own[len(own)/2])
		}
		held, all, halves = held+in, all+of, append(halves, own...)
	}
	slices.Sort(halves)
	t.Logf("together %d of %d held, %.0f %%, median half-width %.0f %%", held, all, 100*float64(held)/float64(all), 100*halves[len(halves)/2])
	require.Greater(t, all, 100)
	assert.GreaterOrEqual(t, float64(held)/float64(all), least)
	assert.LessOrEqual(t, halves[len(halves)/2], widest)
}
