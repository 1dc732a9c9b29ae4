package textreport_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/report/text"
)

func TestWidth(t *testing.T) {
	// Unicode Standard Annex 11: ideographs and hangul are wide, combining marks
	// take no column.
	for text, want := range map[string]int{"lemon": 5, "抹茶": 4, "녹차": 4, "e\u0301": 1, "µg ≥ 3": 6, "": 0} {
		assert.Equal(t, want, textreport.Width(text), text)
	}
}

func TestWrap(t *testing.T) {
	assert.Equal(t, []string{"a bb", "ccc", "dddd"}, textreport.Wrap("a bb ccc  dddd ", 4))
	assert.Equal(t, []string{"a", "bbbb", "bbb", "c"}, textreport.Wrap("a bbbbbbb c", 4)[:4])
	assert.Empty(t, textreport.Wrap("", 4))
	for _, line := range textreport.Wrap(strings.Repeat("抹茶 matcha ", 40)+strings.Repeat("抹", 99), 31) {
		assert.LessOrEqual(t, textreport.Width(line), 31)
	}
	assert.Equal(t, strings.Repeat("抹", 5), strings.Join(textreport.Wrap(strings.Repeat("抹", 5), 1), ""), "a rune wider than the line still gets out")
}

func TestSigns(t *testing.T) {
	assert.Equal(t, "", textreport.Signs(nil))
	assert.Equal(t, " [3]", textreport.Signs([]int{3, 3}))
	assert.Equal(t, " [1,2]", textreport.Signs([]int{2, 1}))
	assert.Equal(t, " [1,3–6,8,9]", textreport.Signs([]int{9, 8, 6, 5, 4, 3, 1}))
}

// A constituent that no group names would never be printed.
func TestEveryConstituentHasAPlaceOnThePage(t *testing.T) {
	words := textreport.Words()
	silent := map[string]string{
		"MASS":         "said in the head of the page",
		"CHOCDF-other": "what balances carbohydrate by difference",
		"MASS-other":   "what balances the mass",
	}
	for _, c := range constituent.All() {
		id := string(c.ID)
		text, ok := words[id]
		assert.True(t, ok, "%s is in no group", id)
		assert.Equal(t, silent[id] != "", text == "", "%s: words %q", id, text)
		assert.LessOrEqual(t, textreport.Width(text), 27, "%s does not fit its column", id)
		assert.NotContains(t, text, "-other", id)
	}
}
