package cli

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/sheet"
)

// Every word that sipsum prints for a constituent is read again, and means it, or
// the mass of what is printed under the same word in monosaccharide equivalents.
func TestPrintedWordsAreRead(t *testing.T) {
	for _, c := range constituent.All() {
		for _, word := range []string{string(c.ID), c.Name, sheet.WordsFor(c)} {
			found, ok := constituentOf(word)
			if assert.True(t, ok, word) && found.ID != c.ID {
				assert.Equal(t, string(c.ID), string(found.ID)+"M", word)
			}
		}
	}
}

func TestWordsOfADesigner(t *testing.T) {
	for said, want := range map[string]constituent.ID{
		"malic": "MALAC", "Malic  Acid": "MALAC", " quinac ": "QUINAC", "sugar": "SUGAR", "caffeine": "CAFFN", "CHO-": "CHOCDF", "saturated fat": "FASAT",
	} {
		c, ok := constituentOf(said)
		if assert.True(t, ok, said) {
			assert.Equal(t, want, c.ID, said)
		}
	}
	for _, said := range []string{"", " ", "acid", "sour", "malic acids"} {
		_, ok := constituentOf(said)
		assert.False(t, ok, said)
	}
	assert.Equal(t, "chlorogenic acids (CHLRAC)", examples("chloro"))
	assert.Contains(t, examples("sour"), "malic acid (MALAC)")
	assert.Equal(t, "trigonelline", named(constituent.Must("trigonelline")), "an id that is its own name stands once")
}
