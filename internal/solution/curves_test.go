package solution_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/solution"
)

func TestSucroseBetweenThePointsItWasBuiltOn(t *testing.T) {
	// CRC Handbook of Chemistry and Physics, "Concentrative properties of aqueous
	// solutions", sucrose at 20 °C: rows that data/solution_sucrose.csv lacks.
	for percent, want := range map[float64]float64{
		2: 1.0060, 12: 1.0465, 15: 1.0592, 18: 1.0722, 24: 1.0990, 26: 1.1082, 36: 1.1562, 46: 1.2079,
	} {
		assert.InDelta(t, want, solution.SucroseDensity(percent), 3e-4, "%v %%", percent)
		density, _ := solution.Density(map[constituent.ID]float64{"SUCS": percent, "WATER": 100 - percent})
		assert.InDelta(t, want, density, 3e-4, "%v %%, from its constituents", percent)
	}
}

func TestOrangeJuiceBrixAndSpecificGravity(t *testing.T) {
	// Belitz, Grosch and Schieberle, table 18.41: 11.41 °Bx, specific gravity 1.046.
	assert.InDelta(t, 1.046, solution.SucroseDensity(11.41)/solution.EthanolDensity(0), 5e-4)
}

func TestAcidCorrection(t *testing.T) {
	// Kimball 1999, Citrus Processing, appendix A: °Bx to add by per cent of
	// anhydrous citric acid; tolerance a unit of the last digit, 4 % above that.
	for acid, want := range map[float64]float64{0.10: 0.02, 0.5: 0.10, 1: 0.20, 2: 0.39, 3: 0.58, 4: 0.78, 5: 0.97} {
		assert.InDelta(t, want, solution.CorrectedBrix(10, acid)-10, max(0.01, 0.04*want))
	}
}

func TestEthanolAgainstTheHandbook(t *testing.T) {
	// CRC Handbook of Chemistry and Physics, ethanol at 20 °C, g/ml; 1e-4.
	for percent, want := range map[float64]float64{5: 0.9893, 10: 0.9819, 20: 0.9687, 40: 0.9352} {
		assert.InDelta(t, want, solution.EthanolDensity(percent/100), 1e-4)
		density, _ := solution.Density(map[constituent.ID]float64{"ALC": percent, "WATER": 100 - percent})
		assert.InDelta(t, want, density, 1e-4, "from its constituents")
	}
	// OIML R 22: 40 % vol is 33.30 % m/m, 12 % vol 9.64 % m/m.
	for abv, grams := range map[float64]float64{40: 33.30, 12: 9.64} {
		assert.InDelta(t, abv, solution.ABV(grams, 100/solution.EthanolDensity(grams/100)), 0.01)
	}
}

func TestWaterActivityOfSyrups(t *testing.T) {
	// New York State Department of Agriculture, water activity of foods (50 %:
	// 0.93, saturated: 0.85) and an extension table (26 %: 0.98, 55 %: 0.91,
	// 65 %: 0.87). The tolerance is one unit of their last digit.
	cases := []struct{ percent, want float64 }{{26, 0.98}, {50, 0.93}, {55, 0.91}, {65, 0.87}, {67.9, 0.85}}
	for _, c := range cases {
		got, ok := solution.WaterActivity(map[constituent.ID]float64{"SUCS": c.percent, "WATER": 100 - c.percent})
		require.True(t, ok)
		assert.InDelta(t, c.want, got, 0.01, "%v %%", c.percent)
	}
	pure, ok := solution.WaterActivity(map[constituent.ID]float64{"WATER": 1})
	require.True(t, ok)
	assert.Equal(t, 1.0, pure)
	_, ok = solution.WaterActivity(map[constituent.ID]float64{"SUCS": 1})
	assert.False(t, ok)
}

func TestFreezingPoint(t *testing.T) {
	// Clarke 2004, The Science of Ice Cream, figure 2.8: a 12 % sucrose solution
	// freezes at −0.77 °C. Dilute solutions: 1.86 K kg/mol, CRC Handbook.
	aw, _ := solution.WaterActivity(map[constituent.ID]float64{"SUCS": 12, "WATER": 88})
	celsius, ok := solution.FreezingPoint(aw)
	require.True(t, ok)
	assert.InDelta(t, -0.77, celsius, 0.02)

	aw, _ = solution.WaterActivity(map[constituent.ID]float64{"GLUS": 0.01 * 180.16, "WATER": 1000})
	celsius, ok = solution.FreezingPoint(aw)
	require.True(t, ok)
	assert.InDelta(t, -0.0186, celsius, 2e-4)

	celsius, ok = solution.FreezingPoint(1)
	require.True(t, ok)
	assert.InDelta(t, 0, celsius, 1e-6)
	for _, never := range []float64{0, -1, 1e-6, 1.001, math.NaN()} { // more than water, or colder than a guess is worth
		celsius, ok = solution.FreezingPoint(never)
		assert.False(t, ok, "%v", never)
		assert.Zero(t, celsius)
	}
}

// CRC Handbook, ethanol in water by mass, rows that data/solution_ethanol_freezing.csv lacks:
// straight lines between the others. Without alcohol it is the freezing point of the water; what is
// dissolved beside it lowers it further. Nobody knows how more than 68 % freezes.
func TestAlcoholFreezesAsPublished(t *testing.T) {
	for percent, want := range map[float64]float64{3: -1.23, 6: -2.54, 9: -3.96, 13: -6.13, 17: -8.69, 19: -10.14, 42: -30.98, 50: -37.67, 58: -43.49, 66: -48.64} {
		got, ok := solution.FreezesAt(map[constituent.ID]float64{"ALC": percent, "WATER": 100 - percent})
		require.True(t, ok)
		assert.InDelta(t, want, got, 0.15, "%g %%", percent)
	}
	syrup := map[constituent.ID]float64{"SUCS": 12, "WATER": 88}
	plain, ok := solution.FreezesAt(syrup)
	require.True(t, ok)
	assert.InDelta(t, -0.77, plain, 0.02, "Clarke 2004, figure 2.8")
	syrup["ALC"] = 10
	both, ok := solution.FreezesAt(syrup)
	require.True(t, ok)
	alone, _ := solution.FreezesAt(map[constituent.ID]float64{"ALC": 10, "WATER": 88})
	assert.Less(t, both, alone)
	assert.Less(t, both, plain)
	for _, grams := range []map[constituent.ID]float64{{"ALC": 70, "WATER": 30}, {"SUCS": 1}} {
		_, ok = solution.FreezesAt(grams)
		assert.False(t, ok)
	}
}

func TestHoldingTables(t *testing.T) {
	// FDA Food Code 1-201.10, tables A and B, cell by cell and at the edges.
	const needs, free = true, false
	cases := []struct {
		aw, ph float64
		packed bool
		want   bool
	}{
		{0.95, 3.2, false, free}, {0.99, 5.0, false, needs}, // unheated syrup; unheated infusion
		{0.99, 4.19, false, free}, {0.99, 4.2, false, needs}, {0.93, 4.6, false, needs}, {0.92, 4.6, false, free},
		{0.92, 4.61, false, needs}, {0.90, 5.0, false, free}, {0.90, 5.01, false, needs}, {0.88, 6, false, needs}, {0.879, 7, false, free},
		{0.99, 4.6, true, free}, {0.99, 4.7, true, needs}, {0.95, 5.6, true, free}, {0.95, 5.7, true, needs}, {0.92, 7, true, free},
	}
	for _, c := range cases {
		got, source := solution.NeedsAssessment(c.aw, c.ph, c.packed)
		assert.Equal(t, c.want, got, "%+v", c)
		assert.Contains(t, source, "Food Code")
	}
	got, _ := solution.NeedsAssessment(math.NaN(), 4, false)
	assert.True(t, got, "what is not known needs an assessment")
}

func TestWeiss(t *testing.T) {
	// Weiss 1974: Bunsen coefficients of CO2 in water are also Bunsen's own of
	// 1855, vol/vol, for 4 to 20 °C within 4 %; Sander's compilation gives 3.3 to
	// 3.4e-2 mol/(l atm) at 25 °C.
	for celsius, want := range map[float64]float64{4: 1.5126, 10: 1.1847, 20: 0.9014} {
		got := solution.CO2Volumes(solution.CO2Solubility(celsius))
		assert.InEpsilon(t, want, got, 0.04)
	}
	assert.InDelta(t, 0.0335, solution.CO2Solubility(25), 0.0006)
}
