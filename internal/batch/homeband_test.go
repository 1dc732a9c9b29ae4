package batch_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/batch"
)

// Three serves of a drink with 1.125 g of salt each want 3.4 g, of which a quarter of a teaspoon (1.5 g,
// USDA SR28) is too coarse: it is weighed, and as much sodium reaches the glass. Salt is 39.34 % sodium by the
// weights of its atoms.
func TestSaltIsHeldAtHome(t *testing.T) {
	h, was := homely(t, flint, 3)
	salt := spooned(t, h, "Salt (sodium chloride)")
	assert.Equal(t, "salty", salt.Weigh)
	assert.InDelta(t, 3.4, salt.Scale.Number, 0.051)
	sodium := func(b batch.Bench) float64 {
		f, ok := central(t, b).PerServing.Find("NA")
		require.True(t, ok)
		return f.Mean
	}
	assert.Greater(t, sodium(was), 1125*0.3934)
	assert.InEpsilon(t, sodium(was), sodium(h.Bench), 0.02)
	assert.NotContains(t, h.Left, "salty")
}

// A drink that lost its gas is not the same: cold coffee cannot be bought sparkling. Where sparkling water
// stands in nobody has stated how much gas it brings, so that nobody can say. A still drink is held to none.
func TestGasIsHeldAtHome(t *testing.T) {
	gas := "      - carbonate: {bottle: 500 ml, charge: 8 g, at: 4 °C, left: 3 g/l}\nbuild: [150 g bottle]\n"
	of := func(list, gas string) *batch.Home {
		h, _ := homely(t, "drink: x\nserves: 1\nscale: 0.1 g\ncomponents:\n  bottle:\n    ingredients: ["+list+"]\n"+gas, 1)
		return h
	}
	lost := of("300 g core:apple-juice, 30 g core:sugar-white", "    steps:\n"+gas)
	assert.Contains(t, lost.Left, "sparkling")
	assert.Less(t, lost.Inside, 0.01)
	bought := of("300 g core:water-tap, 30 g core:sugar-white", "    steps:\n"+gas)
	assert.Equal(t, []string{"sparkling"}, bought.Untold)
	assert.NotContains(t, bought.Left, "sparkling")
	still := of("300 g core:water-tap, 30 g core:sugar-white", "build: [150 g bottle]\n")
	assert.Empty(t, still.Untold)
	assert.Empty(t, still.Left)
}

// SR28 WEIGHT 19177: an envelope of gelatine, one tablespoon, weighs 7 g, so that 3.5 g are half of one.
func TestAnEnvelopeThatIsASpoonIsMeasuredAsOne(t *testing.T) {
	h, _ := homely(t, "drink: x\nserves: 1\nscale: 0.1 g\nbuild: [200 g core:apple-juice, 3.5 g core:gelatin]\n", 1)
	gelatine := spooned(t, h, "Gelatin, dry")
	assert.Equal(t, "tbsp", gelatine.To.Measure.Name)
	assert.InDelta(t, 0.5, gelatine.To.Number, 1e-9)
	assert.InDelta(t, 3.5, gelatine.Grams, 0.02)
}
