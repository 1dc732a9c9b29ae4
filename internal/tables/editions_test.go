package tables_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/embedded"
	"sipsum/internal/tables"
	"sipsum/internal/tables/table"
	"sipsum/internal/tables/tablestest"
)

// published are the whole releases at hand.
var published = map[string][]string{
	"sr": {"sr28"}, "ciqual": {"ciqual2020"}, "swiss": {"swiss53"}, "ifct": {"ifct2017"}, "stfcj": {"japan2020"}, "afcd": {"afcd2"},
	"fndds": {"fndds1718", "2017-2018 FNDDS At A Glance - FNDDS Nutrient Values.xlsx"},
}

// A whole release is recognised, and its foods and values are those of
// data/editions.csv or more (a workbook with its annexes, a code printed twice).
func TestWholeReleasesHaveTheCountsOfTheirEditions(t *testing.T) {
	for name, place := range published {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			format, ok := tables.Find(name)
			require.True(t, ok)
			release := tablestest.Open(t, format, tablestest.Published(t, place...))
			whole, known := table.WholeOf(name, release.Table.Edition)
			require.True(t, known, release.Table.Edition)
			assert.Equal(t, release.Table.Edition, whole.Name)
			foods, values := 0, 0
			for f, err := range release.Foods {
				require.NoError(t, err)
				foods++
				values += len(f.Values)
			}
			assert.GreaterOrEqual(t, foods, whole.Foods)
			assert.LessOrEqual(t, foods, whole.Foods+1)
			assert.GreaterOrEqual(t, values, whole.Values)
		})
	}
}

func TestEditionsAreSourced(t *testing.T) {
	seen := map[string]bool{}
	for _, row := range embedded.Rows("editions.csv") {
		format, ok := tables.Find(row.Text("format"))
		assert.True(t, ok, row.Text("format"))
		key := format.Name + " " + row.Text("edition")
		assert.False(t, seen[key], key)
		seen[key] = true
		assert.NotEmpty(t, row.Text("source"), key)
		assert.Positive(t, row.Whole("foods"), key)
	}
}

// A release whose files do not tell the edition may be a part of the largest one
// that is known; one that tells an edition that nobody knows is held against none.
func TestWhatAReleaseIsHeldAgainst(t *testing.T) {
	for _, c := range []struct {
		format, edition, whole string
		known                  bool
	}{
		{"sr", table.EditionOf("sr", 8789, 150).Name, "28", true},
		{"sr", table.EditionOf("sr", 8000, 150).Name, "28", true},
		{"ifct", "2017", "2017", true},
		{"fndds", "not stated", "2017-2018", true},
		{"fndds", "2021-2023", "", false},
		{"fdc", "2025-04-24", "", false},
		{"generic", "not stated", "", false},
	} {
		whole, known := table.WholeOf(c.format, c.edition)
		assert.Equal(t, c.known, known, "%s %s", c.format, c.edition)
		assert.Equal(t, c.whole, whole.Name, "%s %s", c.format, c.edition)
	}
}
