package markdownreport_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/markdown"
	"sipsum/internal/report/reporttest"
	"sipsum/internal/sheet"
)

// A sheet as Markdown keeps the columns of its tables and the names as names, whatever the drink, and
// says each sentence of the page.
func TestSheets(t *testing.T) {
	for name, text := range reporttest.PaperDrinks(t) {
		paper := sheet.PaperOf(reporttest.Read(t, text))
		var out bytes.Buffer
		require.NoError(t, markdownreport.Sheet(&out, paper), name)
		assert.NotContains(t, out.String(), "<script>", name)
		assert.NotContains(t, out.String(), "<b>", name)
		columns := 0
		for line := range strings.Lines(out.String()) {
			if !strings.HasPrefix(line, "|") {
				columns = 0
				continue
			}
			n := strings.Count(strings.ReplaceAll(line, `\|`, ""), "|")
			if columns > 0 {
				assert.Equal(t, columns, n, "%s: %s", name, line)
			}
			columns = n
		}
		for _, s := range paper.Annex {
			assert.Contains(t, out.String(), "\n# "+s.Heading+"\n", name)
		}
		for _, x := range paper.Senses {
			assert.Contains(t, out.String(), "\n## "+x.Name+"\n", name)
		}
	}
	assert.ErrorContains(t, markdownreport.Sheet(full{}, sheet.PaperOf(reporttest.Read(t, reporttest.HostileDrink()))), "disk full")
}
