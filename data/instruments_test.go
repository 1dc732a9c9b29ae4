package data_test

import (
	"encoding/csv"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
)

// Every instrument and every refraction has a spread that can be drawn and a
// source, or says that it has none.
func TestInstrumentsAndRefractionsAreSourced(t *testing.T) {
	for name, figures := range map[string][]int{"instruments.csv": {1, 3}, "refraction.csv": {1, 2, 3, 4}} {
		file, err := data.FS.Open(name)
		require.NoError(t, err)
		rows, err := csv.NewReader(file).ReadAll()
		require.NoError(t, err)
		require.NoError(t, file.Close())
		seen := map[string]bool{}
		for _, row := range rows[1:] {
			assert.False(t, seen[row[0]], "%s: %s twice", name, row[0])
			seen[row[0]] = true
			assert.NotEmpty(t, row[len(row)-1], "%s: %s", name, row[0])
			sum := 0.0
			for _, at := range figures {
				x, err := strconv.ParseFloat(row[at], 64)
				require.NoError(t, err, "%s: %s", name, row[0])
				assert.GreaterOrEqual(t, x, 0.0)
				sum += x
			}
			if name == "instruments.csv" {
				assert.Positive(t, sum, "%s is never exact", row[0])
			}
		}
	}
}
