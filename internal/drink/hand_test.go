package drink_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
)

// A remark may stand at the drink, at a component and at a line, and readings at the drink as it
// is served: they come after the last step of finish.
func TestNotesAndReadingsOfTheWhole(t *testing.T) {
	d := parseClean(t, head+"Note: for the stage\nmeasured: {pH: 3.4 +/- 0.1, Brix: 11.5°}\ncomponents:\n  c: {ingredients: [1 g a], note: made ahead}\nbuild: [{food: c, amount: 1 G, note: warm}]\nfinish: [chill: {melt: 3 g}]\n")
	assert.Equal(t, "for the stage", d.Note)
	assert.Equal(t, "made ahead", d.Components[0].Note)
	assert.Equal(t, "warm", d.Build[0].Note)
	require.Len(t, d.Finish, 2)
	m, ok := d.Finish[1].(*drink.Measured)
	require.True(t, ok)
	assert.Equal(t, drink.Quantity{Number: 3.4, Half: 0.1, Decimals: 1}, *m.PH)
	assert.Equal(t, drink.Quantity{Number: 11.5, Unit: "°Bx", Decimals: 1}, *m.Brix)
	assert.Empty(t, m.Of(), "of the drink, and of no component")
}

// What is counted keeps its word and its number; the food's table knows the rest.
func TestCountsAreKept(t *testing.T) {
	d := parseClean(t, head+"build: [\"2 Leaves of T:Mint\", 1/2 t:lime, 3 pieces t:fig]\n")
	for i, want := range []drink.Line{
		{Portion: "leaf", Count: 2, Food: "t:Mint", Path: "build/t:mint"},
		{Portion: "piece", Count: 0.5, Food: "t:lime", Path: "build/t:lime"},
		{Portion: "piece", Count: 3, Food: "t:fig", Path: "build/t:fig"},
	} {
		l := d.Build[i]
		assert.Equal(t, want, drink.Line{Portion: l.Portion, Count: l.Count, Food: l.Food, Path: l.Path})
		assert.True(t, l.Counted)
	}
	_, faults := drink.Parse("t", []byte(head+"components: {c: {ingredients: [1 g a]}}\nbuild: [2 pieces c]\n"), nil)
	assert.ErrorContains(t, faults.Err(2), `"c" is a component, not a food of a table`)
}

// A joiner that a script needs stays; one among Latin letters makes two names of one.
func TestJoinersOfScriptsStay(t *testing.T) {
	d := parseClean(t, "drink: می\u200cخواهم\nserves: 1\nbuild: [1 g a] # 👩\u200d🍳\n")
	assert.Equal(t, "می\u200cخواهم", d.Name)
	_, faults := drink.Parse("t", []byte(head+"build: [1 g a\u200cb]\n"), nil)
	assert.ErrorContains(t, faults.Err(2), "nobody sees (U+200C) in the text (take it out: build: [1 g ab])")
}

// Each word that a hand writes for a key is answered with the key and what stood there.
func TestWordsForKeysShowTheLine(t *testing.T) {
	for text, want := range map[string]string{
		"servings: 4 x 90ml":                   "write: serves: 4 and glass: 90ml",
		"temperature: 6-8 °C, in a cold glass": "write: at: 6-8 °C",
		"tds: 1.35 %":                          "a reading stands under measured: measured: {tds: 1.35 %}",
		"ey: 20.8":                             "- brew: {out: … g, yield: 20.8 %}",
		"shake: 12 s":                          "a step stands under steps: of a component, or under finish: - chill: {melt: 30 g}",
		"measured: {PH:3.4}":                   "there is no space after the colon of ph (write: ph: 3.4)",
		"per: 100 g, energy: 1 kJ":             "write each on a line of its own: per: 100 g | energy: 1 kJ",
		"rules: EU, us":                        "rules must be a list (write: rules: [EU, us])",
		"compare-with: espreso\ncomponents: {espresso: {ingredients: [1 g a]}}": "write: compare-with: espresso",
		"scale: 0.1":        "write: scale: 0.1 g",
		"serve: 6 °C":       "write: at: 6 °C",
		"portions: 2":       "write: serves: 2",
		"garnish: lemon":    "- … g lemon",
		"garnish: 2 g peel": "write it on a line of its own: - 2 g peel",
	} {
		_, faults := drink.Parse("t", []byte(head+"build: [1 g a]\n"+text+"\n"), nil)
		assert.ErrorContains(t, faults.Err(2), want, text)
	}
	for line, want := range map[string]string{
		"step: brew":     "write: - brew: {out: … g, strength: … %}",
		"reduce: 300 ml": "write: - reduce: {to: … g",
		"reduce: 300 g":  "write: - reduce: {to: 300 g",
		"steep:1 g a":    "there is no space after the colon of steep",
		"steep: {what: 1 g a, time: 12-14 hrs in the cold}": "write: - steep: {ingredients: [1 g a], for: 12-14 hrs}",
		"brew: {coffee: 18 g, out: 36 g, yield: 20 %}":      "stands under ingredients: - 18 g coffee",
	} {
		_, faults := drink.Parse("t", []byte(head+"components:\n  c:\n    ingredients: [1 g a]\n    steps:\n      - "+line+"\nbuild: [1 g c]\n"), nil)
		assert.ErrorContains(t, faults.Err(2), want, line)
	}
}
