package note_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/note"
)

func TestNotesSayTheSameByKindAndText(t *testing.T) {
	n := note.Note{Kind: "step", Text: "foams", Foods: []string{"core:espresso"}}
	assert.True(t, n.Same(note.Note{Kind: "step", Text: "foams", Constituent: "CO2"}), "whom it is about is not what it says")
	assert.False(t, n.Same(note.Note{Kind: "step", Text: "settles"}))
	assert.False(t, n.Same(note.Note{Kind: "keeping", Text: "foams"}))
}

func TestFiguresInSentences(t *testing.T) {
	for x, want := range map[float64]string{0: "0", 12.345: "12.3", 0.04567: "0.0457", 999.6: "1000", 4: "4"} {
		assert.Equal(t, want, note.Number(x))
	}
	for x, want := range map[float64]string{0: "0", 108.6957: "108.7", 339: "339", 8000: "8000", 123456: "123500", 0.00001234567: "0.00001235", -2.5: "-2.5", 1e7: "10000000"} {
		assert.Equal(t, want, note.Grams(x))
	}
	assert.Equal(t, "NaN", note.Grams(math.NaN()))
}

func TestPlacesAreSaidInWords(t *testing.T) {
	assert.Equal(t, "cherry syrup, reduce", note.Place("cherry syrup/reduce"))
	assert.Equal(t, "half/half ~, steep", note.Place("half~shalf ~t/steep"), "a name keeps its own signs")
}

func TestWhomASentenceIsAbout(t *testing.T) {
	assert.Equal(t, "core:a, core:b", note.Listed([]string{"core:b", "core:a", "core:b"}), "each once, in order of the alphabet")
	assert.Empty(t, note.Listed(nil))
	assert.Equal(t, `"oat"`, note.Quote("oat"))
}
