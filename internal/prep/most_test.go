package prep_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// At −18 °C ethanol and water hold 27.6 % by mass when the last ice forms, at −29.26 °C 40 % (CRC
// Handbook: 26 % freezes at −16.41, 28 % at −18.43): no freezer makes a wine stronger, whatever ice
// was asked for. The ice takes up to 0.38 of the alcohol with it, so less than that is left.
func TestAFreezerConcentratesNoFurtherThanItIsCold(t *testing.T) {
	wine := func() *ledger.Pot {
		return potOf(entered("wine", "wine", map[constituent.ID]float64{"WATER": 90, "ALC": 10}))
	}
	for _, c := range []struct{ freezer, most float64 }{{math.NaN(), 27.6}, {-18, 27.6}, {-29.26, 40}, {-5, 10.95}} {
		low, high := 10.0, 100.0
		for range 30 {
			to := (low + high) / 2
			if _, err := prep.Freeze(wine(), grams(to), c.freezer, factors); err != nil {
				assert.ErrorContains(t, err, "no more ice forms")
				low = to
			} else {
				high = to
			}
		}
		pot := wine()
		_, err := prep.Freeze(pot, grams(high), c.freezer, factors)
		require.NoError(t, err)
		assert.InDelta(t, c.most, 100*pot.Central("ALC")/pot.Central("MASS"), 0.1, "%g °C", c.freezer)
	}
	vodka := potOf(entered("vodka", "spirit", map[constituent.ID]float64{"WATER": 66.7, "ALC": 33.3}))
	_, err := prep.Freeze(vodka, grams(90), math.NaN(), factors)
	require.ErrorContains(t, err, "write at: … °C if yours is colder")
}

// Hot water draws 29 to 36 % of coffee (Streuli 1973, 43 green coffees) and about 30 % of roasted beans:
// more is in no cup, however it was brewed.
func TestNoCupHoldsMoreThanDissolves(t *testing.T) {
	for yield, refused := range map[float64]bool{0.2: false, 0.29: false, 0.35: false, 0.37: true, 0.49: true} {
		out, err := prep.Brew(brewing(), prep.Recipe{Out: grams(38), Yield: grams(yield)}, factors)
		if refused {
			require.ErrorContains(t, err, "no more than 36 % dissolves", "%g", yield)
			continue
		}
		require.NoError(t, err)
		assert.Equal(t, yield > 0.30, len(out.Notes) > 1, "%g: a word where few coffees give so much", yield)
	}
}
