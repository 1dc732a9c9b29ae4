package chemistry_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"sipsum/internal/assay/assaytest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The standard buffers as drinks of own foods, salts by formula in a kilogram of water,
// against their certified pH.
func TestStandardBuffersAsOwnFoods(t *testing.T) {
	const folder = "../../testdata/buffers/"
	file, err := os.Open(folder + "certified.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 9)
	lib := assaytest.Core(t)
	for _, row := range rows[1:] {
		text, err := os.ReadFile(folder + row[0] + ".drink.yaml")
		require.NoError(t, err)
		want, err := strconv.ParseFloat(row[2], 64)
		require.NoError(t, err)
		tolerance, err := strconv.ParseFloat(row[3], 64)
		require.NoError(t, err)
		c := assaytest.Assay(t, lib, string(text), 50).Chemistry
		require.Empty(t, c.PH.Why, row[0])
		assert.InDelta(t, want, c.PH.Mean, tolerance, row[0])
		t.Logf("%-16s certified %.3f, %.3f", row[0], want, c.PH.Mean)
	}
}
