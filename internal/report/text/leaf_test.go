package textreport_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/reporttest"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
)

func leafOf(t *testing.T, l *sheet.Leaf) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, textreport.Leaf(&out, l, textreport.Style{}))
	return out.String()
}

// Nothing of a leaf is lost on 80 columns: every cell of every table stands there, whatever
// the names.
func TestLeavesKeepTheirWordsAndTheirWidth(t *testing.T) {
	s := reporttest.Read(t, reporttest.HostileDrink())
	all := reporttest.Leaves(s)
	all["long menu"] = reporttest.Menu(s.Rules, s, s, s, s, s, s, s).Leaf(7)
	for kind, l := range all {
		text := leafOf(t, l)
		for line := range strings.Lines(text) {
			assert.LessOrEqual(t, textreport.Width(strings.TrimSuffix(line, "\n")), 80, "%s: %s", kind, line)
		}
		cells := map[string]int{}
		for _, b := range l.Blocks {
			if b.Grid == nil {
				continue
			}
			for _, r := range b.Grid.Rows {
				for _, c := range r.Cells {
					cells[c.Text]++
				}
			}
		}
		for cell, n := range cells {
			if cell != "" {
				assert.GreaterOrEqual(t, strings.Count(text, cell), n, "%s: %s", kind, cell)
			}
		}
	}
}

// A whole line of a declaration takes the columns that it covers, and no more.
func TestAWholeLineKeepsItsPercentage(t *testing.T) {
	text := leafOf(t, reporttest.Leaf())
	assert.Regexp(t, `(?m)^ +Includes 6 g Added Sugars +12 %$`, text)
	assert.Regexp(t, `(?m)^ +Trans Fat † +unknown$`, text)
	assert.Contains(t, text, "┃ Contains: Milk")
}
