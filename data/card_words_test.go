package data_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every text of a card stands once in a language, and none says that a drink is without
// anything or gives a figure, which would want a source.
func TestCardWords(t *testing.T) {
	seen := map[string]bool{}
	promise := regexp.MustCompile(`(?i)free from|free of|contains no|without`)
	figure := regexp.MustCompile(`\d+ (mg|g|%|ml)`)
	for _, r := range slices.Concat(rows(t, "card_words.csv"), rows(t, "paper_words.csv")) {
		key := r["key"] + " " + r["language"]
		assert.False(t, seen[key], "%s stands twice", key)
		seen[key] = true
		assert.NotRegexp(t, promise, r["text"], key)
		if !strings.HasPrefix(r["key"], "paper.") { // of which some name a basis
			assert.NotRegexp(t, figure, r["text"], key)
		}
		if !strings.HasPrefix(r["key"], "advice.") {
			assert.NotEmpty(t, r["text"], key)
		}
	}
	assert.Greater(t, len(seen), 50)
}
