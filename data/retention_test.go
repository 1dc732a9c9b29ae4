package data_test

import (
	"encoding/csv"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/constituent"
)

// TestRetentionFactors: the USDA Table of Nutrient Retention Factors, Release 6,
// has 270 codes of 26 nutrients; 2151 is milk heated for about ten minutes.
func TestRetentionFactors(t *testing.T) {
	rows := retentionRows(t, data.FS, "retention.csv")
	header := rows[0]
	assert.Len(t, header, 2+26+1)
	for _, tag := range header[2:28] {
		c, ok := constituent.Find(tag)
		require.True(t, ok, tag)
		assert.Equal(t, tag, string(c.ID), "an alias is not an id")
	}
	assert.Len(t, rows[1:], 270)
	names := map[string]string{}
	for _, row := range rows[1:] {
		assert.Len(t, row[0], 4, "codes are text of four digits")
		assert.NotContains(t, names, row[0])
		names[row[0]] = row[1]
		assert.NotEmpty(t, row[28], "source")
		for i, cell := range row[2:28] {
			share, err := strconv.ParseFloat(cell, 64)
			require.NoError(t, err, "%s %s", row[0], header[2+i])
			assert.True(t, share >= 0 && share <= 100, "%s %s: %s %%", row[0], header[2+i], cell)
		}
	}
	assert.Equal(t, "MILK,HEATED APPROX 10MIN", names["2151"])
	assert.Equal(t, "CHEESE,BAKED", names["0001"])
}

// TestRetentionFactorsAreThePublished compares every cell with the published
// table, which is not part of sipsum, by the map of its columns.
func TestRetentionFactorsAreThePublished(t *testing.T) {
	shared := os.Getenv("SIPSUM_SHARED")
	if shared == "" {
		t.Skip("SIPSUM_SHARED is not set: the published table is needed")
	}
	published := retentionRows(t, os.DirFS(filepath.Join(shared, "tables", "retention")), "usda_retention_r6.csv")
	ours := retentionRows(t, data.FS, "retention.csv")
	place := map[string]int{}
	for i, tag := range ours[0] {
		place[tag] = i
	}
	into := map[string]string{}
	for _, row := range retentionRows(t, data.FS, "maps/retention.csv")[1:] {
		into[row[0]] = row[1]
	}
	require.Len(t, ours, len(published))
	for n, row := range published[1:] {
		code, err := strconv.Atoi(ours[n+1][0])
		require.NoError(t, err)
		assert.Equal(t, row[0], strconv.Itoa(code))
		assert.Equal(t, row[1], ours[n+1][1])
		for i, cell := range row[2:] {
			tag, ok := into[published[0][2+i]]
			require.True(t, ok, published[0][2+i])
			assert.Equal(t, cell, ours[n+1][place[tag]], "%s %s", row[0], tag)
		}
	}
}

func retentionRows(t *testing.T, files fs.FS, name string) [][]string {
	t.Helper()
	file, err := files.Open(name)
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	return rows
}
