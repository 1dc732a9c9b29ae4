package batch_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/batch"
)

// A glass costs what is weighed in for it, whatever the steps lose: 100 g of 250 g that 500 g of juice
// at 8 EUR a kilogram become are 1.60 EUR.
func TestCosts(t *testing.T) {
	const text = `
drink: "Priced"
serves: 1
scale: 1 g
foods:
  pear: {name: "Pear juice", group: fruit juice, fill: core:apple-juice, per: 100 g, price: 4 EUR per 500 g, lot: P7}
  oat: {name: "Oat", group: plant drink, fill: core:oat-drink, per: 100 ml, density: 1.03 g/ml, price: 2 EUR per 1 l, best: 2027-03-31}
  rum: {name: "Cordial", group: fruit juice, fill: core:apple-juice, per: 100 g, price: 10 USD per 1 kg}
  dry: {name: "Powder", group: sugar, fill: core:sugar-white, per: 100 g, price: 3 EUR per 1 l}
components:
  syrup:
    ingredients: [500 g own:pear]
    steps: [{reduce: {to: 250 g}}, {measured: {brix: 23}}]
build: [100 g syrup, 103 g own:oat, 5 g own:rum, 1 g own:dry]
`
	b := batchOf(t, found(t, "priced", text, assaytest.Core(t), nil), batch.Ask{Serves: 10})
	require.Len(t, b.Costs, 2)
	assert.Equal(t, "EUR", b.Costs[0].Currency)
	assert.InDelta(t, 16+2, b.Costs[0].Used, 0.05, "2 kg of juice, with what rounding may cost of it, and a litre of oat")
	assert.InDelta(t, 16+2, b.Costs[0].Outlay, 1e-9, "the spare gram opens no other pack")
	assert.Equal(t, batch.Cost{Currency: "USD", Used: 0.5, Outlay: 10}, b.Costs[1])
	pear := b.Purchases[0]
	assert.Equal(t, []string{"syrup"}, pear.Reread)
	assert.Equal(t, 4.0, pear.Packs)
	assert.Empty(t, b.Purchases[1].Reread, "no lot is stated")
	assert.Nil(t, b.Purchases[3].Price, "by the litre, of what has no density")
}
