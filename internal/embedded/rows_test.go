package embedded_test

import (
	"io/fs"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/embedded"
)

func TestCellsAreAskedForByTheHeadersNames(t *testing.T) {
	rows := embedded.Parse("a.csv", strings.NewReader("name,count,weight\nlemon,2,60.5\n\"lime, small\",3,\n"))
	require.Len(t, rows, 2)
	assert.Equal(t, "lime, small", rows[1].Text("name"))
	assert.Equal(t, 2, rows[0].Whole("count"))
	assert.Equal(t, 60.5, rows[0].Number("weight"))
	x, ok := rows[0].Optional("weight")
	assert.True(t, ok)
	assert.Equal(t, 60.5, x)
	_, ok = rows[1].Optional("weight")
	assert.False(t, ok, "blank is not zero")
}

func TestFaultNamesFileLineAndColumn(t *testing.T) {
	rows := embedded.Parse("a.csv", strings.NewReader("name,count\nlemon,two\n"))
	for want, ask := range map[string]func(){
		`embedded: a.csv:2: count: "two" is not a number`:       func() { rows[0].Number("count") },
		`embedded: a.csv:2: count: "two" is not a whole number`: func() { rows[0].Whole("count") },
		`embedded: a.csv has no column colour`:                  func() { rows[0].Text("colour") },
		`embedded: b.csv is empty`:                              func() { embedded.Parse("b.csv", strings.NewReader("")) },
		`embedded: c.csv: record on line 2: wrong number of fields`: func() {
			embedded.Parse("c.csv", strings.NewReader("name,count\nlemon\n"))
		},
	} {
		assert.PanicsWithValue(t, want, ask)
	}
	assert.Panics(t, func() { embedded.Rows("nobody.csv") })
}

func TestEveryEmbeddedTableReads(t *testing.T) {
	read := 0
	err := fs.WalkDir(data.FS, ".", func(path string, d fs.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(path, ".csv") {
			assert.NotEmpty(t, embedded.Rows(path), path)
			read++
		}
		return err
	})
	require.NoError(t, err)
	assert.Greater(t, read, 50)
}
