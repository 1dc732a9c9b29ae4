package assay_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
)

// A component is scaled to what the drink takes: by hand 95 of 190 g is base, so that 400 g take 200 g of
// the 100 g that its recipe makes. What nothing pours is named, and what is enough is not.
func TestHowMuchOfABatchADrinkTakes(t *testing.T) {
	const text = "drink: x\nserves: 1\ncomponents:\n  base: {ingredients: [100 g core:water-pure]}\n  syrup: {ingredients: [95 g core:sugar-white, 95 g base]}\n" +
		"  enough: {ingredients: [30 g core:espresso]}\n  spare: {ingredients: [1 g only]}\n  only: {ingredients: [30 g core:espresso]}\nbuild: [400 g syrup, 30 g enough]\n"
	var said []string
	for _, n := range assaytest.Assay(t, assaytest.Core(t), text, 20).Notes {
		if n.Kind == "batch" || n.Kind == "unused" {
			said = append(said, n.Text)
		}
	}
	assert.Equal(t, []string{
		"base: the recipe makes 100 g, the drink takes 200 g: multiply the batch by 2",
		"syrup: the recipe makes 190 g, the drink takes 400 g: multiply the batch by 2.2",
		"spare: nothing pours it, so that nothing of it is in the drink; pour it, or take it out",
		"only: nothing pours it, so that nothing of it is in the drink; pour it, or take it out",
	}, said)
}
