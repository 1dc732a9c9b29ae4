package batch_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
)

const flint = `drink: "Flint"
serves: 2
scale: 0.1 g
components:
  espresso shot:
    ingredients: [36 g core:coffee-roasted-arabica, 100 g core:water-brew]
    steps:
      - brew: {out: 72 g, strength: 9.0 %}
  whey:
    ingredients: [500 g core:milk-whole, 30 g core:lemon-juice]
    steps:
      - curdle: {collect: 400 g, by: acid}
build: [72 g espresso shot, 80 g whey, 2.25 g core:salt]
`

// Twelve serves take 432 g of an espresso of which a brew makes 72 g: six brews. A line of a brew is of one
// of them, the file makes all, and no pot is asked for more than it makes, though its spoons are rounded.
func TestABrewIsMadeAsOftenAsTheGlassesWant(t *testing.T) {
	for serves, brews := range map[int]float64{12: 6, 3: 2, 2: 0} {
		h, _ := homely(t, flint, serves)
		require.Equal(t, brews, h.Times["espresso shot"], serves)
		coffee := spooned(t, h, "Coffee, arabica, roasted, ground")
		assert.InDelta(t, 36, coffee.Scale.Number, 1e-9)
		assert.InDelta(t, 36, coffee.Grams, 1e-9)
		a, err := h.Central.Run(context.Background(), nil, assay.Want{})
		require.NoError(t, err)
		for _, note := range a.Notes {
			assert.NotEqual(t, "batch", note.Kind, note.Text)
		}
		makes := 72 * max(brews, 1)
		assert.InEpsilon(t, makes, yieldOf(t, a, "espresso shot").Out, 0.03, "a mark on a pot is rounded")
		for _, m := range h.Moves("espresso shot") {
			for _, w := range m.Amounts {
				assert.InEpsilon(t, 72, w.Grams, 0.03, "the step is of one brew")
			}
		}
	}
}

func yieldOf(t *testing.T, a *assay.Assay, pot string) assay.Yield {
	t.Helper()
	for _, y := range a.Yields {
		if y.Component == pot {
			return y
		}
	}
	require.Fail(t, "no pot "+pot)
	return assay.Yield{}
}
