package amount_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

const penned = `# 30 g cordial is too much
drink: "Penned"
serves: 1
components:
  cordial:
    ingredients:
      - 60 g ± 2 g core:lemon-juice   # squeezed
      - {food: "core:sugar-white", amount: 60 g, note: "60 g"}
    steps:
      - strain: {collect: 100 g, through: cloth}
      - add: ["1.0 g core:citric-acid", 2.0 g core:salt]
      - reduce:
          to: "90 g"
build: [ "30 g cordial", 1/2 tsp core:sugar-white ]
finish:
  - chill: {melt: 9 g}
`

// Amounts are written where they stand: in lines short and long, in steps and in what they bring;
// comments, quotes and layout stay.
func TestAmountsAreWrittenWhereTheyStand(t *testing.T) {
	d, faults := drink.Parse("penned", []byte(penned), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	of := func(text string) unit.Amount {
		a, _, err := unit.ParseAmount(text)
		require.NoError(t, err)
		return a
	}
	written, other := amount.Amounts{}, amount.Amounts{}
	want := penned
	for _, x := range []struct{ path, was, to, row, next string }{
		{"cordial/core:lemon-juice", "60 g ± 2 g", "55 g ± 2 g", "- 60 g ± 2 g core", "- 55 g ± 2 g core"},
		{"cordial/core:sugar-white", "60 g", "62 g", "amount: 60 g", "amount: 62 g"},
		{"cordial/strain/collect", "100 g", "98 g", "collect: 100 g", "collect: 98 g"},
		{"cordial/add/core:citric-acid", "1.0 g", "1.3 g", `"1.0 g core`, `"1.3 g core`},
		{"cordial/add/core:salt", "2.0 g", "0.1 g", "2.0 g core", "0.1 g core"},
		{"cordial/reduce/to", "90 g", "80 g", `to: "90 g"`, `to: "80 g"`},
		{"build/cordial", "30 g", "34 g", `"30 g cordial"`, `"34 g cordial"`},
		{"build/core:sugar-white", "1/2 tsp", "0.75 tsp", "1/2 tsp", "0.75 tsp"},
		{"finish/chill/melt", "9 g", "11 g", "melt: 9 g", "melt: 11 g"},
	} {
		written[x.path], other[x.path] = of(x.was), of(x.to)
		want = strings.Replace(want, x.row, x.next, 1)
	}
	got, err := amount.Rewrite(d, []byte(penned), written, other)
	require.NoError(t, err)
	assert.Equal(t, want, string(got))
}

// What stands in a shelf is not written, and the error says what to write there.
func TestAShelfIsNotWritten(t *testing.T) {
	const text = "use: [house.yaml]\ndrink: x\nserves: 1\nbuild: [10 g syrup]\n"
	d, faults := drink.Parse("x.yaml", []byte(text), func(string) ([]byte, error) {
		return []byte("components:\n  syrup:\n    ingredients: [50 g core:water-pure, 50 g core:sugar-white]\n"), nil
	})
	require.NoError(t, faults.Err(fail.Wrong))
	at := amount.Amounts{"syrup/core:sugar-white": {Number: 40, Measure: d.Build[0].Amount.Measure}}
	_, err := amount.Rewrite(d, []byte(text), at, at)
	assert.ErrorContains(t, err, "shelf house.yaml")
}
