package clean_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/clean"
)

func TestSentences(t *testing.T) {
	assert.Equal(t, "", clean.Listed(nil))
	assert.Equal(t, "a", clean.Listed([]string{"a"}))
	assert.Equal(t, "a, b and c", clean.Listed([]string{"a", "b", "c"}))
	assert.Equal(t, "Éclair", clean.UpperFirst("éclair"))
	assert.Equal(t, "vitamin D", clean.LowerFirst("Vitamin D"))
	assert.Equal(t, "", clean.UpperFirst(""))
}

// A word that goes on with a capital begins a sentence as it is written.
func TestAPHBeginsASentenceAsItIs(t *testing.T) {
	assert.Equal(t, "pH can come down to 3.5", clean.UpperFirst("pH can come down to 3.5"))
	assert.Equal(t, "Sugars", clean.UpperFirst("sugars"))
	assert.Equal(t, "É", clean.UpperFirst("é"))
	assert.Empty(t, clean.UpperFirst(""))
}
