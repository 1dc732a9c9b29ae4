package assay_test

import (
	"testing"

	"sipsum/internal/assay/assaytest"

	"github.com/stretchr/testify/assert"
)

// What a pantry holds and the drink does not use is looked up, so that its faults
// are told, but no draws are made of it: a pantry may hold a thousand lines.
func TestWhatADrinkDoesNotUseIsNotDrawn(t *testing.T) {
	const text = "drink: \"x\"\nserves: 1\ncomponents:\n  shot: {ingredients: [10 g core:espresso]}\nbuild: [10 g core:sugar-white]\n"
	a := assaytest.Assay(t, assaytest.Core(t), text, 50)
	assert.Negative(t, a.Serving.Columns.At("CAFFN"))
}
