package food_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// sour is a food of which only the acidity is known, beside metals and protein.
func sour(figures map[constituent.ID]float64) *food.Food {
	values := map[constituent.ID]float64{"WATER": 17, "CHOCDF": 82, "SUGAR": 60, "PROCNT": 0.3, "NA": 4, "K": 52, "CA": 6, "MG": 2}
	for id, x := range figures {
		values[id] = x
	}
	f := sr("x", "Sour", "other", values)
	for _, id := range []constituent.ID{"WATER", "CHOCDF", "SUGAR", "PROCNT", "NA", "K", "CA", "MG", "titratable"} {
		stated(f, id, 0, 0)
	}
	return f
}

// 0.13 g of citric acid takes 2.03 mmol of base (3 × 130 / 192.12); the metals hold 52 /
// 39.10 + 4 / 22.99 + 2 · 6 / 40.08 + 2 · 2 / 24.31 = 1.97 mmol, and 0.3 g of protein at
// most 0.3 / 5.3 / 14.007 = 4.04 mmol. 8.0 mmol of a lactic acid of 90.08 g/mol are 0.73 g.
func TestAcidsAreBoundedByAcidityAndMetals(t *testing.T) {
	const mmol = 2.03 + 1.97 + 4.04
	p := food.Enter(sour(map[constituent.ID]float64{"titratable": 0.13}), nil)
	lactic := p.Cell("LACAC")
	require.False(t, lactic.Known)
	wide := 2 * 0.16 * 2.03 // two standard deviations of a published acidity (data/acid_unmeasured.csv)
	assert.InEpsilon(t, (mmol+wide)*90.08/1000, 100*lactic.Bound, 0.01)
	assert.InEpsilon(t, (mmol+wide)*196.16/1000, 100*p.Cell("OA").Bound, 0.01, "gluconic acid weighs most for its charge")
	assert.Contains(t, lactic.Why, "titratable acidity")

	without := food.Enter(sour(nil), nil)
	assert.Greater(t, without.Cell("LACAC").Bound, 0.1, "nothing but the row's balance bounds it")
}

// What is known of the acids takes its part of the room.
func TestKnownAcidsTakeTheirRoom(t *testing.T) {
	none := food.Enter(sour(map[constituent.ID]float64{"titratable": 0.5}), nil).Cell("LACAC").Bound
	f := sour(map[constituent.ID]float64{"titratable": 0.5, "MALAC": 400})
	stated(f, "MALAC", 0, 0)
	some := food.Enter(f, nil).Cell("LACAC").Bound
	// 400 mg of malic acid (134.09 g/mol) hold twice 2.98 mmol of charge.
	assert.InEpsilon(t, 2*400/134.09*90.08/1e5, none-some, 0.01)
}

// At pH 6.5 ± 0.5 nearly every proton of an acid is gone: what is left of it is a salt,
// and the metals are the most that there is.
func TestAcidsAreBoundedByPublishedPH(t *testing.T) {
	cell := food.Enter(sour(map[constituent.ID]float64{"PH": 6.5}), nil).Cell("LACAC")
	// Lactic acid of pK 3.86 is 99 % a lactate at pH 6.0: 6.01 mmol of metals and protein.
	assert.InEpsilon(t, 6.01*90.08/1e5, cell.Bound, 0.02)
	acid := food.Enter(sour(map[constituent.ID]float64{"PH": 3.5}), nil).Cell("LACAC")
	assert.Greater(t, acid.Bound, 5*cell.Bound, "at pH 3.0 it keeps most of its protons")
}

// Without potassium nobody knows how much acid is bound as a salt.
func TestUnknownMetalsBoundNothing(t *testing.T) {
	f := sour(map[constituent.ID]float64{"titratable": 0.13})
	for i, v := range f.Values {
		if v.Constituent == "K" {
			f.Values[i].Amount = math.NaN()
		}
	}
	assert.Greater(t, food.Enter(f, nil).Cell("LACAC").Bound, 0.1)
}

// A limit that a food states of its own stands over the highest value of its group; what
// is known of a total takes its part of it.
func TestLimitsOfTotalsAreNotBesideTheirParts(t *testing.T) {
	values := map[constituent.ID]float64{"WATER": 76, "CHOCDF": 22, "SUGAR": 15, "SORTL": 4000, "PROCNT": 1, "ASH": 1}
	f := sr("x", "Plum", "fruit", values)
	for id := range values {
		stated(f, id, 0, 0)
	}
	// A third of 22 g, the most of a fruit (data/bounds.csv), less the 4 g that are known.
	assert.InDelta(t, 0.33*0.22-0.04, food.Enter(f, nil).Cell("POLYL").Bound, 1e-6)
}

// The bases are as sure as their metals, and a titration as what is stated of it: two
// standard deviations of both widen the room.
func TestSpreadsWidenTheRoomOfAcids(t *testing.T) {
	bound := func(id constituent.ID, sd float64) float64 {
		f := sour(map[constituent.ID]float64{"titratable": 0.13})
		stated(f, id, sd, 0)
		return food.Enter(f, nil).Cell("LACAC").Bound * 1000 / 90.08 * 100 // mmol in 100 g
	}
	// 52 ± 20 mg of potassium (39.10 g/mol) are ± 0.51 mmol; 0.13 ± 0.06 g of citric acid ± 0.94 mmol.
	const mmol, published = 2.03 + 1.97 + 4.04, 0.16 * 2.03
	assert.InEpsilon(t, mmol+2*math.Hypot(published, 20/39.10), bound("K", 20), 0.01)
	assert.InEpsilon(t, mmol+2*0.94, bound("titratable", 0.06), 0.01)
	assert.InEpsilon(t, mmol+2*published, bound("titratable", 0.001), 0.01, "no better than what such figures are known to be")
}

// Quinic acid of pK 3.58 ± 0.05 (Serjeant and Dempsey 1979), two deviations weaker, has lost
// 1/(1 + 10^(3.68−3.6)) = 0.454 of its protons at pH 4.0 − 0.4: 6.01 mmol of metals and
// protein and 0.025 mmol of free protons in 100 g keep 13.3 mmol of it, of 192.17 g/mol.
func TestAcidsAreTakenTwoDeviationsWeak(t *testing.T) {
	cell := food.Enter(sour(map[constituent.ID]float64{"PH": 4.0}), nil).Cell("QUINAC")
	assert.InEpsilon(t, (6.01+0.025)/0.454*192.17/1e5, cell.Bound, 0.01)
}
