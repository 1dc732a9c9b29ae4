package data_test

import (
	"encoding/csv"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/constituent"
)

// TestSpreadDefaults: every row is a constituent of the vocabulary and a group of
// the list, once, with evidence and a source; and there is a row for everything.
func TestSpreadDefaults(t *testing.T) {
	groups := map[string]bool{"*": true}
	for _, row := range retentionRows(t, data.FS, "groups.csv")[1:] {
		groups[row[0]] = true
	}
	file, err := data.FS.Open("spread.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Equal(t, []string{"constituent", "group", "relative_sd", "between_sd", "rounding", "n", "evidence", "source"}, rows[0])
	seen := map[string]bool{}
	for _, row := range rows[1:] {
		key := row[0] + " " + row[1]
		assert.False(t, seen[key], "%s stands twice", key)
		seen[key] = true
		if row[0] != "*" {
			c, ok := constituent.Find(row[0])
			require.True(t, ok, key)
			assert.Equal(t, row[0], string(c.ID), "an alias is not an id")
		}
		assert.True(t, groups[row[1]], "%s: no such group", key)
		sd, err := strconv.ParseFloat(row[2], 64)
		require.NoError(t, err, key)
		assert.True(t, sd > 0 && sd < 2, "%s: %g", key, sd)
		between, err := strconv.ParseFloat(row[3], 64)
		require.NoError(t, err, key)
		assert.True(t, between >= 0 && between <= sd, "%s: %g lies between sources, %g in all", key, between, sd)
		assert.NotEmpty(t, row[6], key)
		assert.NotEmpty(t, row[7], key)
	}
	for _, key := range []string{"* *", "WATER *", "SUGAR *", "OA *", "FAT *", "PROCNT *", "ASH *", "FIBTG *", "CAFFN *", "K *", "VITC *", "CHOCDF *"} {
		assert.True(t, seen[key], "no row for %s", key)
	}
}
