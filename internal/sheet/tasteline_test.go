package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// sheetOf is the sheet of a drink of the core table.
func sheetOf(t *testing.T, build string) *sheet.Sheet {
	t.Helper()
	a := assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild: ["+build+"]\n", 200)
	s, err := sheet.Build("test", a, nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, []string{"eu"})
	require.NoError(t, err)
	return s
}

// A line of a category has what the profile has, with its sources, and of sugar what a judge notices in the
// glass: 20.5 to 33 % (npj Sci Food 2022, 6:33) of 10 g of sucrose are 2.05 to 3.3 g.
func TestTasteLines(t *testing.T) {
	s := sheetOf(t, "10.00 g core:sugar-white, 90 g core:water-pure, 10 g core:lemon-juice, 20 g core:espresso")
	line, ok := sheet.TasteLineOf(s, "Sweet")
	require.True(t, ok)
	sweet := sheet.TasteOf(s).Sweet
	assert.Contains(t, line.Says, fmt.Sprintf("sweet as at least %.1f", sweet.Mean))
	assert.Contains(t, line.Says, "% sucrose (")
	assert.Contains(t, line.Says, "a judge notices 2.1 to 3.4 g more or less of it in this glass")
	assert.Contains(t, line.Sources, sweet.Notices.Source)

	for category, words := range map[string]string{
		"acid": "the field disputes which", "bitter": "times its published thresholds", "body": "mPa·s of sugars in their water", "salty": "sodium ",
	} {
		line, ok := sheet.TasteLineOf(s, category)
		require.True(t, ok, category)
		assert.Contains(t, line.Says, words, category)
		assert.NotEmpty(t, line.Sources, category)
		assert.NotContains(t, line.Says, "NaN", category)
	}
	_, ok = sheet.TasteLineOf(s, "the barista's own")
	assert.False(t, ok)
	_, ok = sheet.TasteLineOf(sheetOf(t, "100 g core:water-pure"), "sweet")
	assert.False(t, ok, "water is not sweet")
	_, ok = sheet.TasteLineOf(sheetOf(t, "20 g core:sugar-white"), "sweet")
	assert.False(t, ok, "no liquid")
}

// No line adds compounds up, and one without a threshold is said to have none.
func TestTasteLinesNameEachCompound(t *testing.T) {
	line, ok := sheet.TasteLineOf(sheetOf(t, "40 g core:espresso"), "bitter")
	require.True(t, ok)
	assert.Equal(t, 1, strings.Count(line.Says, "caffeine"))
	assert.Contains(t, line.Says, "no threshold was seen in print for chlorogenic acids")
}

// An interval whose ends are written alike is none.
func TestATasteLineHasNoHollowInterval(t *testing.T) {
	line, ok := sheet.TasteLineOf(sheetOf(t, "10.00 g ± 0.01 g core:sucrose, 90.00 g ± 0.01 g core:water-pure"), "sweet")
	require.True(t, ok)
	assert.Regexp(t, `^sweet as \d+(\.\d)? % sucrose;`, line.Says)
}
