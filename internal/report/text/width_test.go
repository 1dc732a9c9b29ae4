package textreport_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/report/text"
)

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
