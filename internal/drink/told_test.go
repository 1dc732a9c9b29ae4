package drink_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
)

// How hot and how long a step was that is known by what came of it is read, changes nothing of it, and
// is said to change nothing. An oven is hotter than a pot can be.
func TestWhatIsToldChangesNoFigure(t *testing.T) {
	for line, plain := range map[string]string{
		"brew: {out: 300 g, strength: 2 %, at: 4 °C, for: 12 h}": "brew: {out: 300 g, strength: 2 %}",
		"convert: {starch: 60 %, to: glucose, at: 58 °C}":        "convert: {starch: 60 %, to: glucose}",
		"vacuum: {to: 300 g, at: 45 °C}":                         "vacuum: {to: 300 g}",
	} {
		got, said := stepsOf(t, line)
		require.Empty(t, said, line)
		want, _ := stepsOf(t, plain)
		require.Len(t, got, 1, line)
		assert.Contains(t, got[0].Said(), "°C", line)
		assert.Contains(t, got[0].Said(), "changes no figure", line)
		assert.Empty(t, want[0].Said())
		assert.Equal(t, want[0].Kind(), got[0].Kind())
	}
	steps, said := stepsOf(t, "roast: {to: 300 g, at: 180 °C, for: 25 min}")
	require.Empty(t, said)
	require.Len(t, steps, 2)
	assert.Equal(t, 300.0, steps[0].(*drink.Reduce).To.Base())
	assert.False(t, steps[0].(*drink.Reduce).Stated(), "the air of an oven is not the pot")
	assert.Equal(t, "roasted, 180 °C, 25 min", steps[1].(*drink.Treat).Technique)
	_, said = stepsOf(t, "brew: {out: 300 g, strength: 2 %, at: hot}")
	assert.Contains(t, said, `"hot" does not begin with a number`)
}

// A capital is no other word in a list of words, and gelatin is gelatine.
func TestWordsOfListsAreReadAsTheyAreMeant(t *testing.T) {
	d, faults := drink.Parse("t", []byte(head+"build: [1 g a]\nrules: [EU, us]\n"), nil)
	require.NoError(t, faults.Err(2))
	assert.Equal(t, "eu", d.Rules[0].Text)
	steps, said := stepsOf(t, "clarify: {by: gelatin, with: 5 g core:gelatin, collect: 300 g}")
	require.Empty(t, said)
	assert.Equal(t, "gelatine", steps[0].(*drink.Clarify).By)
}
