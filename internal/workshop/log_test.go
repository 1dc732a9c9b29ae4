package workshop_test

import (
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/benchlog"
	"sipsum/internal/fail"
	"sipsum/internal/workshop"
)

// Many who write at the same time, each with the folder open by itself, lose nothing: each line is there once and whole.
func TestNobodyLosesALineOfTheLog(t *testing.T) {
	const writers, each = 8, 40
	dir := t.TempDir()
	var all sync.WaitGroup
	for w := range writers {
		f, err := workshop.Open(dir, plenty)
		require.NoError(t, err)
		defer f.Close()
		all.Go(func() {
			for n := range each {
				assert.NoError(t, f.Log(benchlog.Line{When: "2027-03-31", Who: fmt.Sprint(w), Drink: "Tide", Quantity: "ph", Value: "3.1", Lot: fmt.Sprint(n)}))
			}
		})
	}
	all.Wait()
	lines, faults := benchlog.Parse(benchlog.File, []byte(saved(t, dir, benchlog.File)))
	require.NoError(t, faults.Err(fail.Wrong))
	seen := map[string]bool{}
	for _, l := range lines {
		seen[l.Who+" "+l.Lot] = true
	}
	assert.Len(t, lines, writers*each)
	assert.Len(t, seen, writers*each)
}

// A last line without an end gets one; what is no file, or leads elsewhere, is not written to; a full log says so.
func TestALogIsAddedTo(t *testing.T) {
	line := benchlog.Line{When: "2027-03-31", Drink: "Tide", Quantity: "ph", Value: "3.1"}
	f, dir := folder(t)
	put(t, dir, benchlog.File, "when,who,drink,pot,quantity,value,unit,meter,lot\n2027-03-30,,Tide,,ph,3.0,,,")
	require.NoError(t, f.Log(line))
	lines, faults := benchlog.Parse(benchlog.File, []byte(saved(t, dir, benchlog.File)))
	require.NoError(t, faults.Err(fail.Wrong))
	assert.Len(t, lines, 2)
	for range 40 {
		if err := f.Log(line); err != nil {
			assert.ErrorContains(t, err, "longer than it may be")
			break
		}
	}
	assert.Less(t, len(saved(t, dir, benchlog.File)), most)
	outside := filepath.Join(t.TempDir(), "elsewhere.csv")
	require.NoError(t, os.WriteFile(outside, nil, 0o644))
	require.NoError(t, os.Remove(filepath.Join(dir, benchlog.File)))
	require.NoError(t, os.Symlink(outside, filepath.Join(dir, benchlog.File)))
	assert.Error(t, f.Log(line))
	text, err := os.ReadFile(outside)
	require.NoError(t, err)
	assert.Empty(t, text)
}
