package textreport_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/drink"
	"sipsum/internal/note"
	"sipsum/internal/reading"
	"sipsum/internal/report/text"
)

// Readings head the page, those that do not agree before the others; what disagrees is
// said once, a titration too, and does not come again among the notes.
func TestReadingsHeadAssayAndSheet(t *testing.T) {
	far := reading.Reading{Path: []string{"syrup"}, Kind: "brix", Unit: "°Bx", Read: 54, Expected: 50.6, Used: 52.9, Advice: "12 g of water count as gone"}
	a := &assay.Assay{
		Drink: &drink.Drink{Name: "Far Off", Serves: 1}, Serving: ofWater(),
		Readings: []reading.Reading{
			{Kind: "density", Unit: "g/ml", Read: 1.05, Expected: 1.0483, Used: 1.0497, Agrees: true},
			far,
			{Path: []string{"whey"}, Kind: "ph", Unit: "pH", Read: 4.6, Expected: math.NaN(), Used: 4.6, Agrees: true},
		},
		Notes: []note.Note{{Kind: "reading disagrees", Text: far.Note()}, {Kind: "reading disagrees", Text: "milk: twice the base"}, {Kind: "step", Text: "a step"}},
	}
	for name, print := range map[string]func() (string, error){
		"assay": func() (string, error) {
			var out bytes.Buffer
			err := textreport.Assay(&out, unruled(a), textreport.Style{Width: 100})
			return out.String(), err
		},
		"sheet": func() (string, error) {
			var out bytes.Buffer
			err := textreport.Sheet(&out, unruled(a), textreport.Style{Width: 100})
			return out.String(), err
		},
	} {
		page, err := print()
		require.NoError(t, err)
		page = strings.Join(strings.Fields(strings.ReplaceAll(page, "\u00a0", " ")), " ")
		at := func(text string) int {
			require.Equal(t, 1, strings.Count(page, text), "%s: %q once in %s", name, text, page)
			return strings.Index(page, text)
		}
		order := []int{
			at("Readings"), at("! syrup, °Brix: read 54 · expected 50.6 · used 52.9 – recipe and reading disagree: 12 g of water count as gone"),
			at("! milk: twice the base"), at("– the finished drink, density: read 1.05 · expected 1.048 · used 1.050 g/ml"),
			at("– whey, pH: read 4.6 · the recipe does not tell · used 4.60"), at("a step"),
		}
		assert.IsIncreasing(t, order, name)
	}
}
