package sheet_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/sheet"
)

// Every word that sipsum prints for a constituent is read again wherever a tagname may stand, and
// means it: of a mass and the same in monosaccharide equivalents, which share their word, the mass;
// of two with one word both, and the writer is asked. data/constituent_words.csv is where a new
// word of groups.csv goes.
func TestPrintedWordsAreRead(t *testing.T) {
	for _, c := range constituent.All() {
		word := sheet.WordsFor(c)
		var ids []constituent.ID
		for _, said := range constituent.Said(word) {
			ids = append(ids, said.ID, said.ID+"M")
		}
		assert.Contains(t, ids, c.ID, word)
	}
}
