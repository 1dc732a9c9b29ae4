package data_test

import (
	"encoding/csv"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
)

// Every limit of what a reading may move is a figure, and says whose bound it is.
func TestReadingLimitsAreFiguresWithASource(t *testing.T) {
	file, err := data.FS.Open("reading_limits.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	limits := map[string]float64{}
	for _, row := range rows[1:] {
		x, err := strconv.ParseFloat(row[1], 64)
		require.NoError(t, err, row[0])
		assert.NotContains(t, limits, row[0])
		assert.Contains(t, row[3], "our own bound", row[0])
		limits[row[0]] = x
	}
	assert.Less(t, limits["plausible beside another cause"], limits["plausible"])
	assert.Less(t, limits["least water"], 1.0)
	assert.Greater(t, limits["most water"], 1.0)
}
