package prep_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
	"sipsum/internal/solution"
)

// centrally is a column of one central value and other draws.
func centrally(central, drawn float64) []float64 {
	col := grams(drawn)
	col[0] = central
	return col
}

// asking is every step that is asked for a mass, by what it says if that cannot be.
var asking = map[string]struct {
	pot  func() *ledger.Pot
	step func(pot *ledger.Pot, mass []float64) error
}{
	"reduce to 9999 g: the pot holds only 100 g": {func() *ledger.Pot { return potOf(juice()) }, func(pot *ledger.Pot, mass []float64) error {
		_, err := prep.Reduce(pot, mass, factors)
		return err
	}},
	"freeze down to 9999 g: the pot holds only 100 g": {func() *ledger.Pot { return potOf(juice()) }, func(pot *ledger.Pot, mass []float64) error {
		_, err := prep.Freeze(pot, mass, math.NaN(), factors)
		return err
	}},
	"collect 9999 g: only about ": {func() *ledger.Pot { return potOf(juice()) }, func(pot *ledger.Pot, mass []float64) error {
		_, err := prep.Strain(pot, mass, "cloth", factors)
		return err
	}},
	"collect 9999 g: curd and whey give about ": {func() *ledger.Pot { return potOf(cream()) }, func(pot *ledger.Pot, mass []float64) error {
		_, err := prep.Curdle(pot, mass, "acid", 70, factors)
		return err
	}},
	"collect 9999 g: pot and extract weigh about ": {func() *ledger.Pot { return potOf(juice()) }, func(pot *ledger.Pot, mass []float64) error {
		_, err := prep.Steep(pot, ledger.New(pot.Columns, pot.N), prep.Steeping{Collect: mass}, factors)
		return err
	}},
	"collect 9999 g: about 100 g are left without the fat": {func() *ledger.Pot { return potOf(juice()) }, func(pot *ledger.Pot, mass []float64) error {
		_, err := prep.Wash(pot, ledger.New(pot.Columns, pot.N), mass, factors)
		return err
	}},
	"collect 9999 g: at most 100 g are there": {func() *ledger.Pot { return potOf(juice()) }, func(pot *ledger.Pot, mass []float64) error {
		_, err := prep.Split(pot, nil, mass)
		return err
	}},
	"9999 g in the cup hold": {brewing, func(pot *ledger.Pot, mass []float64) error {
		_, err := prep.Brew(pot, prep.Recipe{Out: mass, Yield: grams(0.2)}, factors)
		return err
	}},
}

// What cannot be is an error at central values, in the figures that were written, and the
// pot stays as it was.
func TestWhatCannotBeIsRefusedAtCentralValues(t *testing.T) {
	for says, c := range asking {
		pot := c.pot()
		before := pot.Mass()
		err := c.step(pot, centrally(9999, 50))
		require.Error(t, err, says)
		assert.Contains(t, err.Error(), says)
		assert.InDeltaSlice(t, before, pot.Mass(), close, says)
	}
}

// In single draws a step takes what there is: no more than was in the pot, and nothing
// below zero.
func TestSingleDrawsTakeWhatThereIs(t *testing.T) {
	for says, c := range asking {
		for _, drawn := range []float64{0, 9999} {
			pot := c.pot()
			before := pot.Mass()
			require.NoError(t, c.step(pot, centrally(40, drawn)), says)
			for d, mass := range pot.Mass() {
				require.LessOrEqual(t, mass, before[d]+close, "%s draw %d of %g", says, d, drawn)
				require.GreaterOrEqual(t, mass, -close, "%s draw %d of %g", says, d, drawn)
			}
			for row := range pot.Rows {
				for col := range pot.Columns.List {
					for d := 0; pot.Has(row, col) && d < pot.N; d++ {
						require.GreaterOrEqual(t, pot.Cell(row, col)[d], -close, "%s: %s", says, pot.Columns.List[col].ID)
					}
				}
			}
		}
	}
}

// Notes speak of central values: 18 g of coffee, 60.9 g of water of which 32.4 g are in the
// cup, leave 28.5 g of water in 18 g of grounds.
func TestNotesSpeakOfCentralValues(t *testing.T) {
	columns := ledger.NewColumns([]*food.Profile{bean(), water()})
	drawer, pot := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: n}, columns), ledger.New(columns, n)
	for i, p := range []*food.Profile{bean(), water()} {
		pot.Pour(p, drawer.PerGram(p), centrally([]float64{18, 60}[i], []float64{25, 90}[i]), p.Food.ID.String())
	}
	out, err := prep.Brew(pot, prep.Recipe{Out: centrally(36, 40), Strength: centrally(0.1, 0.11)}, factors)
	require.NoError(t, err)
	assert.Contains(t, out.Notes[0], "36 g at 10 % are 20 % of the dose; the grounds hold 1.6 g of water a gram")
}

func TestBottlesAreRefusedInTheFiguresThatWereWritten(t *testing.T) {
	c := &prep.Charge{Gas: solution.CarbonDioxide, Bottle: centrally(500, 900), Grams: centrally(8000, 1), Celsius: grams(4)}
	_, _, err := prep.Carbonate(c, nil, grams(300), grams(0), factors)
	assert.ErrorContains(t, err, "8000 g of gas in 500 ml would be about ")
}
