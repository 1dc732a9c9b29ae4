package spelling_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/spelling"
)

// The words of a name say more than its letters: "water" is none of a date.
func TestWholeWordsBeforeSlips(t *testing.T) {
	codes := []string{"date", "watr", "watermelon-juice", "soda-water", "water-tap", "lemon-juice", "wine"}
	assert.Equal(t, []string{"soda-water", "water-tap", "watermelon-juice", "watr"}, spelling.Nearest("water", codes))
	for written, want := range map[string]string{
		"lemon juice": "lemon-juice", "LEMON-JUICE": "lemon-juice", "lemonjuice": "lemon-juice", "lemno-juice": "lemon-juice", "juice, lemon": "lemon-juice",
		"soda waters": "soda-water", "the date": "date", "watermel": "watermelon-juice",
	} {
		if near := spelling.Nearest(written, codes); assert.NotEmpty(t, near, written) {
			assert.Equal(t, want, near[0], written)
		}
	}
	for _, written := range []string{"", "-", "espresso", "gin"} {
		assert.Empty(t, spelling.Nearest(written, codes), written)
	}
	assert.Empty(t, spelling.Nearest("water", []string{"", " "}))
}

// What an eye does not tell apart is alike: case, spaces, and what has no shape (U+200B, U+00AD).
func TestNamesThatReadAlike(t *testing.T) {
	for _, name := range []string{"Syrup", " syrup", "syr up", "SYRUP", "syr\u200bup", "syr\u00adup", "syr\u00a0up"} {
		assert.True(t, spelling.Alike("syrup", name), "%q", name)
	}
	for a, b := range map[string]string{"syrups": "syrup", "syrup 1.5": "syrup 15", "syrup 2-1": "syrup 21", "syrup": "syrup!"} {
		assert.False(t, spelling.Alike(a, b), "%s, %s", a, b)
	}
}

// Whoever wrote "honey" did not mean the honey syrup that it goes into, and "syrop" is one letter
// from it.
func TestSlipsAreToldFromOtherNames(t *testing.T) {
	for name, like := range map[string]bool{"honey": true, "Honey": true, "hony": true, "honey syrup": false} {
		n, ok := spelling.Near(spelling.NameOf("honey"), spelling.NameOf(name))
		assert.True(t, ok, name)
		assert.Equal(t, like, n.InLetters(), name)
	}
}
