package markdownreport_test

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/markdown"
	"sipsum/internal/report/reporttest"
	"sipsum/internal/sheet"
)

var update = flag.Bool("update", false, "rewrite the golden file")

func printed(t *testing.T, l *sheet.Leaf) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, markdownreport.Leaf(&out, l))
	return out.String()
}

func TestLeafKeepsItsForm(t *testing.T) {
	got := printed(t, reporttest.Leaf())
	const path = "testdata/leaf.md"
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), got, "run with -update and read the difference")
}

// Every row of a table has as many cells as its head, whatever stands in the names.
func TestTablesKeepTheirColumns(t *testing.T) {
	for kind, l := range reporttest.Leaves(reporttest.Read(t, reporttest.HostileDrink())) {
		columns := 0
		for line := range strings.Lines(printed(t, l)) {
			if !strings.HasPrefix(line, "|") {
				columns = 0
				continue
			}
			n := strings.Count(strings.ReplaceAll(line, `\|`, ""), "|")
			if columns > 0 {
				assert.Equal(t, columns, n, "%s: %s", kind, line)
			}
			columns = n
		}
	}
}

// No name becomes markup, a link, a heading or a list.
func TestNamesStayNames(t *testing.T) {
	l := &sheet.Leaf{Blocks: []sheet.Block{{Lines: []sheet.Line{}}}}
	for _, name := range append([]string{"- a", "# b", "1. c", "a\\b", "https://example.org", "**d**", "~~e~~", "&amp;", "<img src=x onerror=y>"}, reporttest.Hostile...) {
		l.Blocks[0].Lines = append(l.Blocks[0].Lines, sheet.Line{Text: name})
	}
	got := printed(t, l)
	for _, sign := range []string{"<script>", "<b>", "<img", "\\<", "**d**", "~~e~~"} {
		assert.NotContains(t, got, sign)
	}
	for _, want := range []string{`- \- a`, `- \# b`, `- 1\. c`, `a\\b`, `https\://example.org`, `- &amp;amp;`, `&lt;script&gt;`, `&lt;img src=x`, `a \| b`, `\[f\]`, `\=cmd`} {
		assert.Contains(t, got, want)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestErrorsOfTheWriterAreReported(t *testing.T) {
	assert.ErrorContains(t, markdownreport.Leaf(full{}, reporttest.Leaf()), "disk full")
}
