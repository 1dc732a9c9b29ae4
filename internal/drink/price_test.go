package drink_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

func TestHowAFoodIsSold(t *testing.T) {
	const head = "drink: x\nserves: 1\nfoods:\n  f: {name: n, per: 100 g, fill: core:a, "
	read := func(keys string) (drink.OwnFood, error) {
		d, faults := drink.Parse("t", []byte(head+keys+"}\nbuild: [1 g own:f]\n"), nil)
		return d.Foods[0], faults.Err(fail.Wrong)
	}
	f, err := read(`price: 12.50 USD per 700 ml, lot: L 22, best: 2027-03-31`)
	require.NoError(t, err)
	assert.Equal(t, 12.5, f.Price.Number)
	assert.Equal(t, "USD", f.Price.Currency)
	assert.Equal(t, 700.0, f.Price.Per.Base())
	assert.Equal(t, "L 22", f.Lot)
	assert.Equal(t, "2027-03-31", f.Best)
	for _, wrong := range []string{"4.20 per 1 kg", "4.20 EUR", "EUR per 1 kg", "4.20 € per 1 kg", "4.20 EUR per 0 kg", "4.20 EUR per 5 %", "4.20 EUR per 1 kg ± 1 g", "4.20 EUR per 1 kg net", "-1 EUR per 1 kg"} {
		_, err := read("price: \"" + wrong + "\"")
		assert.ErrorContains(t, err, "4.20 EUR per 1 kg, or 12.50 USD per 700 ml", wrong)
	}
	for _, wrong := range []string{"soon", "31.03.2027", "2027-13-01", "2027-02-32"} {
		_, err := read("best: \"" + wrong + "\"")
		assert.ErrorContains(t, err, "write year, month and day", wrong)
	}
}
