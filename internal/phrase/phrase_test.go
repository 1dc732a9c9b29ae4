package phrase_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/phrase"
)

// A star stands for whatever follows in a word, and for nothing else of the name.
func TestAStarOpensAWord(t *testing.T) {
	berries := phrase.Read("holunderbeer*|rote beer*")
	for name, found := range map[string]bool{
		"Holunderbeersirup": true, "Sirup, Holunderbeeren": true, "Holunderbeer": true, "Rote Beeren": true,
		"Holunderblüte": false, "Holunder": false, "Beeren, rote": false,
	} {
		assert.Equal(t, found, berries.In(phrase.Words(name)), name)
	}
}
