package assay_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
)

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
		err := assaytest.Refused(t, assaytest.Core(t), onePot(c.pot, "dilute: {brix: "+c.brix+"}"))
		assert.Contains(t, err, "test:7:9: dilute to")
		assert.Contains(t, err, c.says, "%s to %s", c.pot, c.brix)
	}
}
