package prep_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// sugary makes a pot that has columns for all that sugars may become.
func sugary(profiles ...*food.Profile) *ledger.Pot {
	columns := ledger.NewColumns(profiles, "GLUS", "FRUS", "GALS", "CHOCDF-other", "OA-other", "MASS-other", "ALC", "LACAC", "ACEAC", "MALAC", "CO2")
	drawer, pot := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: n}, columns), ledger.New(columns, n)
	for _, p := range profiles {
		pot.Pour(p, drawer.PerGram(p), grams(100), p.Food.ID.String())
	}
	return pot
}

func sugar() *food.Profile {
	return entered("sugar", "sugar", map[constituent.ID]float64{"SUCS": 100, "SUGAD": 100})
}

func milk() *food.Profile {
	return entered("milk", "milk", map[constituent.ID]float64{"WATER": 88, "FAT": 3.5, "PROCNT": 3.3, "LACS": 4.5, "ASH": 0.7, "CA": 110, "ZN": 0.4})
}

// 342.30 g of sucrose and 18.015 g of water are 360.31 g of hexoses: 100 g become
// 105.26 g (IUPAC atomic weights).
func TestInvertTakesUpWater(t *testing.T) {
	pot := sugary(juice(), sugar())
	_, err := prep.Invert(pot, grams(1))
	require.NoError(t, err)
	for d, mass := range pot.Mass() {
		require.InDelta(t, 200, mass, close, "draw %d", d)
	}
	assert.Zero(t, central(pot, "SUCS"))
	const hexoses = 360.312 / 342.297
	assert.InDelta(t, 110*hexoses, central(pot, "SUGAR"), 1e-3)
	assert.InDelta(t, central(pot, "GLUS"), central(pot, "FRUS"), close)
	assert.InDelta(t, 86-110*(hexoses-1), central(pot, "WATER"), 1e-3)
	assert.Zero(t, pot.Of(1, "WATER")[0], "dry sugar takes the juice's water")
	assert.InDelta(t, 100*hexoses, pot.Of(1, "SUGAR")[0], 1e-3, "and stays its own contribution")
}

func TestInvertedSugarStaysAdded(t *testing.T) {
	added := entered("sugar", "sugar", map[constituent.ID]float64{"SUCS": 100})
	added.Food.Marks = []food.Mark{{Kind: "added sugar", Share: 1}}
	added = food.Enter(added.Food, nil)
	pot := sugary(juice(), added)
	require.InDelta(t, 100, pot.Of(1, "SUGAD")[0], close)
	_, err := prep.Invert(pot, grams(0.5))
	require.NoError(t, err)
	assert.InDelta(t, pot.Of(1, "SUGAR")[0], pot.Of(1, "SUGAD")[0], close)
}

func TestInvertRefusesADryPot(t *testing.T) {
	_, err := prep.Invert(sugary(sugar()), grams(1))
	require.Error(t, err)
}

// An unknown sucrose could have become glucose and fructose.
func TestInvertMovesABound(t *testing.T) {
	pot := sugary(entered("cloudy", "", map[constituent.ID]float64{"WATER": 86, "CHOCDF": 13, "PROCNT": 1}))
	sucrose, _ := pot.Bound("SUCS")
	glucose, _ := pot.Bound("GLUS")
	require.Positive(t, sucrose)
	_, err := prep.Invert(pot, grams(0.5))
	require.NoError(t, err)
	after, _ := pot.Bound("SUCS")
	assert.InDelta(t, sucrose/2, after, close)
	after, _ = pot.Bound("GLUS")
	assert.InDelta(t, glucose+sucrose/2*180.156/342.297, after, 1e-4)
}

// inverted gives the rate in 1/s from the share that is split in a short time.
func inverted(pH, celsius float64) []float64 {
	const minutes = 1e-3
	share := prep.Inverted(grams(pH), grams(celsius), grams(minutes), factors)
	for d := range share {
		share[d] /= minutes * 60
	}
	return share
}

// Published rates that are not behind data/kinetics.csv: neutral water at 27 and
// 37 °C, 2.1e-11 and 8.5e-11 1/s (a textbook problem on the hydrolysis of
// sucrose), and 0.1 mol/l HCl (pH 1.094 at 25 °C, NIST scale) with 30 g/l of
// sucrose at 24.7 °C, 7.42e-4 1/min (Guggenheim and Wiseman 1950).
func TestInversionAgainstPublishedRates(t *testing.T) {
	for _, c := range []struct{ pH, celsius, perSecond float64 }{
		{7, 27, 2.1e-11}, {7, 37, 8.5e-11}, {1.094, 24.7, 7.42e-4 / 60},
	} {
		k := new(estimate.Summariser).Of(inverted(c.pH, c.celsius))
		assert.Less(t, math.Abs(math.Log(k.Mean/c.perSecond)), math.Log(1.4), "pH %v, %v °C: %.3g", c.pH, c.celsius, k.Mean)
		assert.Less(t, k.Low, c.perSecond)
		assert.Greater(t, k.High, c.perSecond)
	}
	ratio := inverted(7, 37)[0] / inverted(7, 27)[0]
	assert.InDelta(t, 8.5/2.1, ratio, 0.15, "10 °C more")
}

func TestHydrolyseSplitsLactose(t *testing.T) {
	pot := sugary(milk())
	_, err := prep.Hydrolyse(pot, grams(0.9))
	require.NoError(t, err)
	assert.InDelta(t, 0.45, central(pot, "LACS"), close)
	assert.InDelta(t, 4.05*180.156/342.297, central(pot, "GLUS"), 1e-4)
	assert.InDelta(t, central(pot, "GLUS"), central(pot, "GALS"), close)
	assert.InDelta(t, 100, pot.Mass()[0], close)
}

// burning is a share of the sugars and what the step needs besides.
func burning(pot *ledger.Pot, loss []float64) prep.Burning {
	acids := food.Enter(prep.BurntSugarAcids(), nil)
	return prep.Burning{Loss: loss, Acids: acids, PerGram: ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: pot.N}, pot.Columns).PerGram(acids)}
}

func TestCarameliseKeepsTheMassWithoutAName(t *testing.T) {
	pot := sugary(juice(), sugar())
	out := prep.Caramelise(pot, burning(pot, grams(0.12)), factors)
	assert.InDelta(t, 0.88*110, central(pot, "SUGAR"), close)
	assert.InDelta(t, 200, pot.Mass()[0], close)
	assert.InDelta(t, 0.12*110, central(pot, "CHOCDF-other")+central(pot, "OA-other"), close)
	assert.NotEmpty(t, out.Notes)
	plain := sugary(entered("plain", "sugar", map[constituent.ID]float64{"SUCS": 100, "CHOAVL": 100, "FIBTG": 0}))
	prep.Caramelise(plain, burning(plain, grams(0.12)), factors)
	for _, id := range []constituent.ID{"CHOAVL", "FIBTG"} { // caramel may be either
		assert.InDelta(t, 12, plain.Bounds(0)[constituent.Must(id).Order], close, id)
	}
}

// The acid of burnt sugar has a ceiling, and little burnt sugar makes little of it: what
// is unknown of it grows from nothing with the loss.
func TestAcidOfBurntSugarHasACeiling(t *testing.T) {
	const ceiling = 0.027 // g/g: data/kinetics.csv
	for _, loss := range []float64{0, 1e-9, 0.01, 0.5, 1} {
		pot := sugary(juice(), sugar())
		before := pot.Total("OA")
		prep.Caramelise(pot, burning(pot, grams(loss)), factors)
		for d, x := range pot.Total("OA") {
			made := x - before[d]
			require.LessOrEqual(t, made, ceiling*loss*110*(1+close), "loss %g, draw %d", loss, d)
			require.GreaterOrEqual(t, made, 0.0)
		}
		assert.InDelta(t, 0.00057*loss*110, central(pot, "OA")-before[0], close)
		for _, id := range []constituent.ID{"FORAC", "ACEAC", "LACAC"} {
			bound := pot.Bounds(len(pot.Rows) - 1)[constituent.Must(id).Order]
			assert.GreaterOrEqual(t, bound, ceiling*loss*110*(1-close), "%s", id)
			assert.LessOrEqual(t, bound, ceiling*loss*220, "%s: the juice may hold more sugar than is known", id)
		}
	}
}
