package data_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// TestAnywhere: every group has one class, every row is a constituent of the vocabulary and
// a class that has groups, once, with what it rests on; no interval is narrower than nothing
// or wider than what comparisons show.
func TestAnywhere(t *testing.T) {
	classes, groups := map[string]bool{}, map[string]bool{}
	for _, r := range rows(t, "anywhere_classes.csv") {
		assert.False(t, groups[r["group"]], "%s stands twice", r["group"])
		_, ok := food.GroupOf(r["group"])
		assert.True(t, ok, "%s: no such group", r["group"])
		groups[r["group"]], classes[r["class"]] = true, true
	}
	seen := map[string]bool{}
	for _, r := range rows(t, "anywhere.csv") {
		key := r["constituent"] + " " + r["class"]
		assert.False(t, seen[key], "%s stands twice", key)
		seen[key] = true
		_, ok := constituent.Find(r["constituent"])
		assert.True(t, ok, key)
		assert.True(t, classes[r["class"]], key)
		sd, err := strconv.ParseFloat(r["relative_sd"], 64)
		require.NoError(t, err, key)
		assert.True(t, sd > 0 && sd < 2, "%s: %g", key, sd)
		tail, err := strconv.ParseFloat(r["tail"], 64)
		require.NoError(t, err, key)
		assert.True(t, tail >= 0 && tail < 1, "%s: %g", key, tail)
		assert.NotEmpty(t, r["evidence"], key)
	}
	for _, key := range []string{"SUGAR fruits", "SUGAR juices", "K fruits", "WATER juices", "PROCNT milks", "CITAC fruits"} {
		assert.True(t, seen[key], "no row for %s", key)
	}
}
