package tables_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/tables"
)

func TestFormatsAreTold(t *testing.T) {
	for folder, want := range map[string]string{
		"../../data/core": "core", "../../testdata/tables/sr": "sr", "../../testdata/tables/ifct": "ifct",
		"../../testdata/tables/ciqual": "ciqual", "../../testdata/tables/ciqual-xml": "ciqual", "../../testdata/tables/swiss": "swiss",
		"../../testdata/tables/generic": "generic",
		"../../testdata/tables/cofid":   "cofid",
		"../../testdata/tables/cnf":     "cnf",
		"../../testdata/tables/fdc":     "fdc",
		"../../testdata/tables/fndds":   "fndds", "../../testdata/tables/fndds-csv": "fndds",
		"../../testdata/tables/stfcj": "stfcj", "../../testdata/tables/afcd": "afcd",
	} {
		f, ok := tables.Sniff(folder)
		require.True(t, ok, folder)
		assert.Equal(t, want, f.Name)
		found, ok := tables.Find(want)
		require.True(t, ok)
		assert.Equal(t, f.Title, found.Title)
	}
	for _, folder := range []string{".", "nowhere", "tables.go"} {
		_, ok := tables.Sniff(folder)
		assert.False(t, ok, folder)
	}
	_, ok := tables.Find("nothing")
	assert.False(t, ok)
}

func TestFormatsSayWhatTheyAre(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range tables.Formats() {
		assert.NotEmpty(t, f.Title, f.Name)
		assert.NotEmpty(t, f.Licence, f.Name)
		assert.NotEmpty(t, f.Needs, f.Name)
		assert.NotNil(t, f.Open, f.Name)
		assert.False(t, seen[f.Name])
		seen[f.Name] = true
	}
}
