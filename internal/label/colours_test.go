package label_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/label"
)

// levels gives the note that grades a drink; empty if there is none.
func levels(t *testing.T, rules string, f label.Facts) string {
	t.Helper()
	for _, n := range card(t, rules, f).Notes {
		if n.Kind == label.Levels {
			assert.Equal(t, label.Secondary, n.Status)
			assert.NotEmpty(t, n.Source)
			return n.Text
		}
	}
	return ""
}

// The guide of the United Kingdom to labels on the front of packs, November 2016, drinks: green
// and red limits per 100 ml, and red for sugars from 13.5 g in a portion over 150 ml on. A
// colour is a word and never stands without its grade and the limit that decides it.
func TestLevelsOfADrink(t *testing.T) {
	f := facts(200, map[constituent.ID]float64{"FAT": 6, "FASAT": 1, "SUGAR": 14, "CHOAVL": 14, "CHOCDF": 14, "NA": 700})
	text := levels(t, "uk", f)
	assert.Contains(t, text, "fat 3 g: amber (medium), over 1.5 and up to 8.75 g;")
	assert.Contains(t, text, "saturates 0.5 g: green (low), up to 0.75 g;")
	assert.Contains(t, text, "sugars 7 g: red (high), over 13.5 g in a portion of more than 150 ml;")
	assert.Contains(t, text, "salt 0.875 g: red (high), over 0.75 g.")
	assert.Contains(t, text, "of fat, saturates, salt is not judged", "their limits by the portion are from memory alone")
	f.ServingMl = 150 // a portion of just 150 ml is judged by 100 ml: 9.33 g
	assert.Contains(t, levels(t, "uk", f), "sugars 9.33 g: amber (medium)")
	f.ServingMl = 0
	assert.Empty(t, levels(t, "uk", f), "the limits for drinks are per 100 ml")
	f.ServingMl = 200
	for _, rules := range []string{"eu", "us", "ca", "anz", "codex"} {
		assert.Empty(t, levels(t, rules, f), rules)
	}
}

// What is not known does not make a drink green.
func TestLevelsOfWhatIsNotKnown(t *testing.T) {
	f := facts(100, map[constituent.ID]float64{"FAT": 2})
	f.Serving["FASAT"] = estimate.Amount{Mean: 0.5, WithBounds: 2, Known: true}
	f.Serving["SUGAR"] = estimate.Amount{WithBounds: math.NaN()}
	text := levels(t, "uk", f)
	assert.Contains(t, text, "saturates 0.5 to 2 g: green (low), up to 0.75 g, if not amber (medium): not all of it is known;")
	assert.Contains(t, text, "sugars not known;")
	f.Serving["FASAT"] = estimate.Amount{Mean: 0.5, WithBounds: math.NaN(), Known: true}
	require.Contains(t, levels(t, "uk", f), "if not amber (medium) or red (high): not all of it is known;")
}
