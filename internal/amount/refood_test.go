package amount_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

const orchard = `drink: "Tin Orchard"
serves: 1
components:
  cordial:
    ingredients:
      - 100 g core:apple-juice   # pressed today
      - 20 g core:sugar-white
    steps:
      - measured: {brix: 25}
build: [60 g cordial, 5 g core:sugar-white, 100 g core:black-tea]   # sugar twice
finish:
  - measured: {ph: 3.6}
`

// Another food stands in the place of the one that is named, with its amount; remarks and all else stay, and of a list
// of readings that are taken out nothing is left.
func TestAnotherFoodStandsInItsPlace(t *testing.T) {
	d, faults := drink.Parse("x", []byte(orchard), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	line := d.Components[0].Ingredients[1]
	more := line.Amount
	more.Number = 28
	text, err := amount.Refood(d, []byte(orchard), map[string]string{line.Path: "core:xylitol", d.Build[1].Path: "core:fructose"}, amount.Amounts{line.Path: line.Amount}, amount.Amounts{line.Path: more})
	require.NoError(t, err)
	text, err = amount.Unread(d, text, []string{"cordial"})
	require.NoError(t, err)
	assert.Equal(t, `drink: "Tin Orchard"
serves: 1
components:
  cordial:
    ingredients:
      - 100 g core:apple-juice   # pressed today
      - 28 g core:xylitol
build: [60 g cordial, 5 g core:fructose, 100 g core:black-tea]   # sugar twice
`, string(text))
	_, faults = drink.Parse("x", text, nil)
	assert.NoError(t, faults.Err(fail.Wrong))
}

// What a line says of its food beside the name is not of another, and what stands in a shelf is not written.
func TestALineThatSaysMoreIsWrittenByHand(t *testing.T) {
	const text = "drink: x\nserves: 1\nbuild:\n  - {food: core:lemon-flesh, amount: 20 g, fill: core:lemon-juice}\n"
	d, faults := drink.Parse("x", []byte(text), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	foods := map[string]string{d.Build[0].Path: "core:lime-juice"}
	_, err := amount.Refood(d, []byte(text), foods, nil, nil)
	assert.ErrorContains(t, err, "write the line by hand")
	d.Build[0].Fill, d.Build[0].FoodAt.File = "", "house.shelf.yaml"
	_, err = amount.Refood(d, []byte(text), foods, nil, nil)
	assert.ErrorContains(t, err, "house.shelf.yaml, which is not written")
	assert.Equal(t, 20.0, d.Build[0].Amount.Number)
	assert.Equal(t, unit.Mass, d.Build[0].Amount.Measure.Kind)
}
