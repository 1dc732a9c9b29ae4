package assay_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What a pantry holds and the drink does not use is looked up, so that its faults
// are told, but no draws are made of it: a pantry may hold a thousand lines.
func TestWhatADrinkDoesNotUseIsNotDrawn(t *testing.T) {
	const text = "drink: \"x\"\nserves: 1\ncomponents:\n  shot: {ingredients: [10 g core:espresso]}\nbuild: [10 g core:sugar-white]\n"
	a := run(t, coreLibrary(t), text, 50)
	assert.Negative(t, a.Serving.Columns.At("CAFFN"))
}
