package swiss_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/tables/swiss"
	"sipsum/internal/tables/table"
	"sipsum/internal/tables/tablestest"
	"sipsum/internal/unit"
)

// TestMapIsWhole takes the columns from the published header, and the unit of
// each figure from the first row that has one.
func TestMapIsWhole(t *testing.T) {
	file, err := os.Open(filepath.Join(some, "generic-foods.csv"))
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows[0], 202)
	m := table.ReadMap("swiss")
	release := tablestest.Open(t, swiss.Format, some)
	words := map[string]string{
		"kilojoule": "kJ", "kilocalorie": "kcal", "gram": "g", "milligram": "mg", "microgram": "µg",
		"retinol equivalent": "µg RE", "beta-carotene equivalent": "µg", "alpha-tocopherol equivalent": "mg",
	}
	figures := 0
	for i, heading := range rows[0] {
		if i+1 == len(rows[0]) || rows[0][i+1] != "unit" {
			row, found := m.Find(heading)
			assert.True(t, found && row.Fate == table.Refused, heading)
			continue
		}
		column := release.Columns[figures]
		figures++
		require.Equal(t, heading, column.Name)
		for _, row := range rows[1:] {
			if row[i+1] != "" {
				assert.Equal(t, words[row[i+1]], column.Unit, heading)
				break
			}
		}
		row, found := m.Find(column.Number)
		require.True(t, found, heading)
		if row.Fate == table.Kept {
			assert.NotEmpty(t, row.Why, heading)
			continue
		}
		factor, ok := unit.Convert(column.Unit, constituent.Must(column.ID).Unit)
		assert.True(t, ok, heading)
		assert.Equal(t, factor, row.Factor, heading)
	}
	assert.Equal(t, 37, figures)
}
