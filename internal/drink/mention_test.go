package drink_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// What lines at fault name, and the lines of steps at fault, is told with its place, so that its own
// faults show in the same round.
func TestLinesAtFaultAreMentioned(t *testing.T) {
	text := head + "components:\n  pot:\n    ingredients:\n      - 5 gx core:a b\n      - {food: core:c, amount: 5 gx}\n      - 5 gx honey\n    steps:\n" +
		"      - steep: {ingredients: [5 g core:d], at: 90 X}\nbuild: [1 g pot]\n"
	d, faults := drink.Parse("f", []byte(text), nil)
	assert.Equal(t, 4, faults.Len())
	assert.Equal(t, []drink.Mention{
		{Food: "core:a b", At: fail.Place{File: "f", Line: 6, Col: 14}},
		{Food: "core:c", At: fail.Place{File: "f", Line: 7, Col: 16}},
		{Food: "core:d", At: fail.Place{File: "f", Line: 10, Col: 35}},
		{Food: "pot", At: fail.Place{File: "f", Line: 11, Col: 13}},
	}, d.Mentions, "without an amount nobody can tell where a bare name begins")
	assert.Empty(t, d.Components[0].Ingredients)
}

// An entry of vary that no line can follow is told beside other faults, unless a line at fault may be
// the one that is meant.
func TestVaryIsJudgedBesideOtherFaults(t *testing.T) {
	got := faultsOf(t, head+"build: [1 g a, 2 gx core:b, 3 gx honey]\nvary:\n  - {of: nobody, from: 1 g, to: 2 g}\n  - {of: \"core:b\", from: 1 g, to: 2 g}\n  - {of: honey, from: 1 g, to: 2 g}\n")
	if assert.Len(t, got, 3) {
		assert.Contains(t, got[2], `5:5: vary names "nobody"`)
	}
}
