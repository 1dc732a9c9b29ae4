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
	assert.InDelta(t, 16+2, b.Costs[0].Used, 1e-9, "2 kg of juice and a litre of oat")
	assert.InDelta(t, 16+2, b.Costs[0].Outlay, 1e-9, "rounding opens no other pack")
	assert.Equal(t, batch.Cost{Currency: "USD", Used: 0.5, Outlay: 10}, b.Costs[1])
	pear := b.Purchases[0]
	assert.Equal(t, []string{"syrup"}, pear.Reread)
	assert.Equal(t, 4.0, pear.Packs)
	assert.Empty(t, b.Purchases[1].Reread, "no lot is stated")
	assert.Nil(t, b.Purchases[3].Price, "by the litre, of what has no density")
	assert.NotNil(t, b.Purchases[3].Unpriced, "and that is told")
}

// As many packs are bought as hold what is weighed in, whatever is left in the last: 1004 g are two of
// a kilogram, 703 g two of 700 g.
func TestPacksAreNeverTooFew(t *testing.T) {
	for _, of := range []struct {
		grams, pack string
		packs       float64
	}{{"1004", "1 kg", 2}, {"703", "700 g", 2}, {"700", "700 g", 1}, {"10050", "10 g", 1005}, {"2100", "700 g", 3}} {
		text := "drink: Packs\nserves: 1\nscale: 1 g\nfoods:\n  pear: {name: Pear, group: fruit juice, fill: core:apple-juice, per: 100 g, price: 4 EUR per " +
			of.pack + "}\nbuild: [" + of.grams + " g own:pear]\n"
		b := batchOf(t, found(t, "packs", text, assaytest.Core(t), nil), batch.Ask{Serves: 1})
		assert.Equal(t, of.packs, b.Purchases[0].Packs, "%s g by %s", of.grams, of.pack)
	}
}

// A date is set against the day of the service: milk that is best before the 4th is over on the 5th,
// and on the 2nd a pot that keeps for seven days is used up by its third.
func TestBestBefore(t *testing.T) {
	const text = `
drink: "Dated"
serves: 1
foods:
  milk: {name: "Farm milk", group: milk, fill: core:milk-whole, per: 100 g, best: 2026-12-04}
components:
  base:
    ingredients: [100 g own:milk]
    keeps: 7 days at 4 °C
  punch:
    ingredients: [50 g base, 50 g core:apple-juice]
    keeps: 2 days at 4 °C
build: [50 g punch]
`
	r := found(t, "dated", text, assaytest.Core(t), nil)
	on := func(day string) batch.Sold {
		return batchOf(t, r, batch.Ask{Serves: 4, Day: day}).Purchases[0].Sold
	}
	assert.True(t, on("2026-12-05").Past)
	assert.False(t, on("2026-12-04").Past)
	assert.Equal(t, []batch.Late{{Pot: "base", UseUp: 3}}, on("2026-12-02").Late)
	assert.Equal(t, []batch.Late{{Pot: "base", UseUp: 1}, {Pot: "punch", UseUp: 1}}, on("2026-12-04").Late, "what holds it too")
	assert.Empty(t, on("2026-11-20").Late)
	assert.False(t, on("").Past, "nobody says on which day")
}
