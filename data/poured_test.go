package data_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// What designs may pour is sourced, and each preparation is a pot that a drink file can have.
func TestWhatDesignsPourIsSourced(t *testing.T) {
	groups, preparations := byKey(t, "groups.csv", "group"), byKey(t, "preparations.csv", "preparation")
	for _, r := range rows(t, "poured.csv") {
		at := r["group"] + ", " + r["preparation"]
		assert.Contains(t, groups, r["group"], at)
		assert.Contains(t, preparations, r["preparation"], at)
		assert.Less(t, number(t, r, "from"), number(t, r, "to"), at)
		assert.Less(t, number(t, r, "water_low"), number(t, r, "water_high"), at)
		assert.Contains(t, r["source"], "our own bound: ", at)
		assert.NotEqual(t, []string{"vegetable", "pressed"}, []string{r["group"], r["preparation"]}, "some are poison raw")
	}
	for _, r := range rows(t, "preparations.csv") {
		at := r["preparation"]
		assert.NotEmpty(t, r["source"], at)
		assert.NotContains(t, r["source"], "from memory", at)
		assert.Contains(t, r["called"], "{}", at)
		if r["ingredients"] == "" {
			assert.Empty(t, r["steps"], at)
			continue
		}
		text := "drink: x\nserves: 1\ncomponents:\n  pot:\n    ingredients:\n"
		for in := range strings.SplitSeq(r["ingredients"], ";") {
			text += "      - " + strings.ReplaceAll(strings.TrimSpace(in), "{food}", "core:pear-juice") + "\n"
		}
		if r["steps"] != "" {
			text += "    steps:\n      - " + r["steps"] + "\n"
		}
		_, faults := drink.Parse("test", []byte(text+"build: [10 g pot]\n"), nil)
		require.NoError(t, faults.Err(fail.Wrong), at)
	}
}
