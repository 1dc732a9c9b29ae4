package table_test

import (
	"io"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/tables/table"
)

var (
	_ table.Cells = (*table.CSVRows)(nil)
	_ table.Cells = (*table.SheetRows)(nil)
)

func openCells(t *testing.T, text string, separator rune) *table.CSVRows {
	t.Helper()
	rows, err := table.OpenCSV(fstest.MapFS{"t.csv": {Data: []byte(text)}}, "dir", "t.csv", separator, "mend it")
	require.NoError(t, err)
	t.Cleanup(rows.Close)
	return rows
}

func TestCSVRowsGiveFilledRowsWithTheirLine(t *testing.T) {
	rows := openCells(t, "\ufeffa title\n;;\nx;\"two\nlines\";3\n\n;y\n", ';')
	type row struct {
		line  int
		cells []string
	}
	var all []row
	for {
		cells, err := rows.Next()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		all = append(all, row{rows.Number(), slices.Clone(cells)})
	}
	assert.Equal(t, []row{{1, []string{"a title"}}, {3, []string{"x", "two\nlines", "3"}}, {6, []string{"", "y"}}}, all)
	assert.ErrorContains(t, rows.Wrong(1, "is odd"), "dir/t.csv:6:2: is odd (mend it)")
	assert.ErrorContains(t, rows.Wrong(9, "is missing"), "dir/t.csv:6:2: is missing")
}

func TestCSVRowsRefuseWithThePlace(t *testing.T) {
	for name, c := range map[string]struct{ text, says string }{
		"zero byte": {"a\nb,\x00\n", "dir/t.csv:2:3: a zero byte"},
		"encoding":  {"a\ncaf\xe9\n", "dir/t.csv:2:1: this cell is not UTF-8"},
		"cut off":   {"a\nb", "the file may be cut off"},
		"quote":     {"a\nb,\"c\n", "dir/t.csv:2:6"},
		"long":      {"a\n" + strings.Repeat("x", table.LongestField+1) + "\n", "dir/t.csv:2:1: this cell is longer"},
	} {
		rows := openCells(t, c.text, ',')
		var err error
		for err == nil {
			_, err = rows.Next()
		}
		assert.ErrorContains(t, err, c.says, name)
	}
	_, err := table.OpenCSV(fstest.MapFS{}, "dir", "t.csv", ',', "mend it")
	assert.ErrorContains(t, err, "dir/t.csv: cannot be read")
}
