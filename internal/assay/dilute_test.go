package assay_test

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
)

// refused gives why a pot with a step, or a drink, cannot be made as written.
func refused(t *testing.T, text string) string {
	t.Helper()
	d, faults := drink.Parse("test", []byte(text), nil)
	_, err := assaytest.Run(context.Background(), d, faults, assaytest.Core(t), assaytest.Options{Draws: 24, Seed: 1, Want: assay.Want{Whole: true}})
	require.Error(t, err, "%s", text)
	return err.Error()
}

// onePot is a drink of 20 g of a pot after a step, which stands in line 7, column 9.
func onePot(ingredients, step string) string {
	return fmt.Sprintf("drink: x\nserves: 1\ncomponents:\n  pot:\n    ingredients: [%s]\n    steps:\n      - %s\nbuild: [20 g pot]\n", ingredients, step)
}

func TestWaterBringsNoReadingToNothingNorUp(t *testing.T) {
	const syrup, water = "100 g core:sugar-white, 60 g core:water-pure", "100 g core:water-pure"
	for _, c := range []struct{ pot, brix, says string }{
		{syrup, "0", "no water is enough"},
		{syrup, "0.4 ± 0.4", "no water is enough"},
		{water, "0", "no water is enough"},
		{water, "12", "reads only 0 °Bx"},
		{syrup, "80", "reads only 62"},
	} {
		err := refused(t, onePot(c.pot, "dilute: {brix: "+c.brix+"}"))
		assert.Contains(t, err, "test:7:9: dilute to")
		assert.Contains(t, err, c.says, "%s to %s", c.pot, c.brix)
	}
}
