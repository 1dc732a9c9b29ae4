package drink_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// Two pots that case, spaces or what cannot be seen tell apart are one to whoever reads the drink.
func TestNamesThatReadAlikeAreRefused(t *testing.T) {
	const pot = ": {ingredients: [1 g a]}\n"
	for second, says := range map[string]string{
		"Syrup": `5:3: case and spaces are all that tells the component "Syrup" from "syrup", at t:4:3`, "syr up": `5:3: case and spaces`,
		"\"syr\\u200bup\"": `5:3: the component's name holds a character that nobody sees (U+200B) (take it out: syrup)`,
		"\"syr\\u00adup\"": `5:3: the component's name`,
	} {
		got := faultsOf(t, head+"components:\n  syrup"+pot+"  "+second+pot+"build: [1 g syrup]\n")
		if assert.Len(t, got, 1, second) {
			assert.Contains(t, got[0], says)
		}
	}
	for _, second := range []string{"syrups", "syrup 2", "syrup-2", "sirup"} {
		assert.Empty(t, faultsOf(t, head+"components:\n  syrup"+pot+"  "+second+pot+"build: [1 g syrup]\n"), second)
	}
	const oat = ": {name: O, per: 100 g, source: x, values: {SUGAR: 1 g}}\n"
	got := faultsOf(t, head+"foods:\n  oat"+oat+"  OAT"+oat+"build: [1 g a]\n")
	if assert.Len(t, got, 1) {
		assert.Contains(t, got[0], `the food "OAT" from "oat"`)
	}
}

// What a file holds that is none of sipsum's stays in it, whatever is wrong with it.
func TestAFileThatIsNoPantryIsNotShown(t *testing.T) {
	const secret = "hunter2"
	for _, text := range []string{
		secret, "- " + secret, secret + ": 1\n", "a: \"" + secret + "\n", "a #" + secret + "\nb\n", "foods:\n  " + secret + ": 1\n" + secret + ": 2\n", "{" + secret, "a: b: " + secret, "? " + secret + "\n", "[" + secret + ", 1]", "%" + secret,
	} {
		_, faults := drink.Parse("f", []byte("use: [p]\n"+head+"build: [1 g a]\n"), func(string) ([]byte, error) { return []byte(text), nil })
		err := faults.Err(fail.Wrong)
		require.Error(t, err, text)
		assert.NotContains(t, err.Error(), secret, text)
		assert.Regexp(t, `^p:\d+:\d+: this is not a file of foods and components \(a file under use: holds foods: and components:, and nothing else\)$`, err.Error())
	}
	for text, says := range map[string]string{
		"components:\n  a: {ingredients: [1 g a]}\nserves: 2\n": `p:3:1: a shelf has no key "serves"`, "componets: {}\n": `p:1:1: a shelf has no key "componets" (did you mean "components"?`,
		"foods: {}\ncomponents: \"x\n": "p:2:13: the quote that opens here is not closed",
	} {
		_, faults := drink.Parse("f", []byte("use: [p]\n"+head+"build: [1 g a]\n"), func(string) ([]byte, error) { return []byte(text), nil })
		require.Error(t, faults.Err(fail.Wrong), text)
		assert.Contains(t, faults.Err(fail.Wrong).Error(), says)
	}
	_, faults := drink.Parse("f", []byte("use: [p]\n"+head+"build: [1 g a]\n"), func(string) ([]byte, error) {
		return nil, fail.Because(fail.Wrong, errors.New("gone"), "cannot read p", "look for it")
	})
	assert.EqualError(t, faults.Err(fail.Wrong), "f:1:7: cannot read p: gone (look for it)")
}

// Categories, split and ferment take words, once each, and keep the ids.
func TestStepsAndCategoriesTakeWords(t *testing.T) {
	text := head + "components:\n  pot:\n    ingredients: [1 g a]\n    steps:\n      - split: {keep: {Milk sugar: 3 %, fat: 2 %}, because: b}\n      - ferment: {after: {alcohol: 1 g}, because: b}\nbuild: [1 g pot]\ncategories: {sour: [Malic Acid, citric]}\n"
	d, faults := drink.Parse("f", []byte(text), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	assert.Equal(t, []string{"MALAC", "CITAC"}, d.Categories[0].Tags)
	steps := d.Components[0].Steps
	assert.Equal(t, "LACS", steps[0].(*drink.Split).Keep[0].Tag)
	assert.Equal(t, "FAT", steps[0].(*drink.Split).Keep[1].Tag)
	assert.Equal(t, "ALC", steps[1].(*drink.Ferment).Figures[0].Tag)
	got := faultsOf(t, head+"build: [1 g a]\ncategories: {sour: [malic, MALAC, NACL, carbs, sournes]}\n")
	assert.Len(t, got, 4)
}
