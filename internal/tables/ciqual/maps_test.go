package ciqual_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/tables/ciqual"
	"sipsum/internal/tables/table"
	"sipsum/internal/tables/tablestest"
	"sipsum/internal/unit"
)

// TestMapIsWhole takes the headings from the published rows, and the unit of
// each from its end: "(mg/100 g)".
func TestMapIsWhole(t *testing.T) {
	file, err := os.Open(filepath.Join(fourteen, "ciqual.csv"))
	require.NoError(t, err)
	defer file.Close()
	in := csv.NewReader(file)
	in.Comma = ';'
	header, err := in.Read()
	require.NoError(t, err)
	m := table.ReadMap("ciqual")
	assert.Len(t, m.Rows, len(header))
	release := tablestest.Open(t, ciqual.Format, fourteen)
	constituents := 0
	for _, heading := range header {
		_, end, ok := strings.Cut(heading, "/100 g)")
		if !ok {
			row, found := m.Find(heading)
			assert.True(t, found && row.Fate == table.Refused, heading)
			continue
		}
		require.Empty(t, end)
		printed := heading[strings.LastIndex(heading, "(")+1 : len(heading)-len("/100 g)")]
		column := release.Columns[constituents]
		constituents++
		assert.Equal(t, printed, column.Unit, heading)
		row, found := m.Find(column.Number)
		require.True(t, found, heading)
		assert.NotEmpty(t, row.Why, heading)
		if row.Fate == table.Kept {
			assert.Equal(t, 1.0, row.Factor, heading)
			continue
		}
		require.Equal(t, table.Mapped, row.Fate, heading)
		factor, ok := unit.Convert(printed, constituent.Must(column.ID).Unit)
		assert.True(t, ok, heading)
		assert.Equal(t, factor, row.Factor, heading)
	}
	assert.Equal(t, 67, constituents)
}
