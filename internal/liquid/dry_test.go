package liquid_test

import (
	"fmt"
	"math"
	"testing"

	"sipsum/internal/assay/assaytest"

	"github.com/stretchr/testify/assert"
)

// A refractometer and a densimeter read liquids: a powder or a crystal has neither
// reading, however much of it would dissolve, and no reading leaves the scale.
func TestOnlyLiquidsHaveBrixAndDensity(t *testing.T) {
	lib := assaytest.Core(t)
	alone := func(code string) string { return fmt.Sprintf("drink: x\nserves: 1\nbuild: [100 g core:%s]\n", code) }
	for code, liquid := range map[string]bool{
		"instant-coffee": false, "wheat-flour": false, "sugar-white": false, "sunflower-oil": false, "olive-oil": false, "ghee": false, "calcium-chloride": false, "chia-seed": false, "matcha": false, "raisin-golden": false, "date": false, "almond-paste": false,
		"honey": true, "glucose-syrup-acid": true, "milk-whole": true, "cream-heavy": true, "butter-unsalted": true, "vodka-40": true, "espresso": true, "apple": true, "water-pure": true, "chocolate-syrup": true, "garlic": true,
	} {
		c := assaytest.Assay(t, lib, alone(code), 20).Chemistry
		assert.Equal(t, liquid, c.TooDry == "", "%s: %s", code, c.TooDry)
		assert.Equal(t, liquid, !math.IsNaN(c.Brix.Mean), code)
		assert.Equal(t, liquid, !math.IsNaN(c.Density.Mean), code)
		if !liquid {
			assert.Equal(t, c.TooDry, c.BrixCorrected.Why, code)
		}
	}
	tin := assaytest.Assay(t, lib, "drink: x\nserves: 1\nfoods:\n  tin: {name: Tin, per: 100 g, values: {NA: 4 mg}, source: invented}\nbuild: [100 g own:tin]\n", 20)
	assert.Equal(t, "nobody has stated the water of own:tin", tin.Chemistry.TooDry)
	jelly := assaytest.Assay(t, lib, "drink: x\nserves: 1\nbuild: [18 g core:sugar-raw-cane, 9 g core:water-pure, 52 g core:gelatin]\n", 60).Chemistry
	assert.NotEmpty(t, jelly.TooDry, "half of the draws lie beyond 95 °Bx")
	soaked := assaytest.Assay(t, lib, "drink: x\nserves: 1\nbuild: [50 g core:raisin, 60 g core:water-pure]\n", 20).Chemistry
	assert.Empty(t, soaked.TooDry)
	dissolved := assaytest.Assay(t, lib, "drink: x\nserves: 1\nbuild: [20 g core:instant-coffee, 80 g core:water-pure]\n", 20).Chemistry
	assert.Empty(t, dissolved.TooDry)
	assert.InDelta(t, 19.4, dissolved.Brix.Mean, 2, "20 g of a powder of 3.1 % of water, SR28 14214")
}

// The scale of a refractometer for syrups ends at 95 °Bx.
func TestNoCoreFoodLeavesTheScale(t *testing.T) {
	lib := assaytest.Core(t)
	for id := range lib {
		c := assaytest.Assay(t, lib, fmt.Sprintf("drink: x\nserves: 1\nbuild: [100 g %s]\n", id), 20).Chemistry
		if c.TooDry == "" {
			assert.Less(t, c.Brix.High, 95.0, id)
			assert.GreaterOrEqual(t, c.Brix.Low, 0.0, id)
		}
	}
}
