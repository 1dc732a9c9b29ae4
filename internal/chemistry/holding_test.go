package chemistry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/solution"
)

// keeping works out how a solution of so much sucrose and citric acid in a gram keeps.
func keeping(t *testing.T, sucrose, citric, spread float64, group string, keeps *drink.Keeps, read bool) (*chemistry.Keeping, *chemistry.Chemistry) {
	t.Helper()
	pot, lab := assaytest.Pot(300, assaytest.Poured{Code: "jar", Grams: 100, Group: group, Holds: grams{"WATER": 1 - sucrose - citric, "SUCS": sucrose, "CITAC": citric}, Spread: grams{"SUCS": spread, "CITAC": 0.2}})
	c := chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 25, Read: acidity.Surely{PH: read}, House: true, Keeps: keeps})
	k := c.Keeping
	if k == nil {
		return nil, c
	}
	activity := make([]float64, acidity.ChemistryDraws+1)
	for d := range activity {
		aw, ok := solution.WaterActivity(grams{"WATER": pot.Total("WATER")[d], "SUCS": pot.Total("SUCS")[d], "CITAC": pot.Total("CITAC")[d]})
		require.True(t, ok)
		activity[d] = aw
	}
	assert.Equal(t, estimate.Summarise(activity), k.WaterActivity.Summary, "of the draws that are solved")
	celsius, ok := solution.FreezingPoint(activity[0])
	require.True(t, ok)
	assert.Equal(t, celsius, k.Freezing.Mean)
	assert.Less(t, k.Freezing.Low, k.Freezing.High)
	return k, c
}

// A syrup from 30 °Brix is asked how it keeps, and what somebody keeps. Sucrose of 60 g in
// 100 g has a water activity of 0.90 (Norrish 1966, J. Food Technol. 1:25).
func TestWhoIsAskedHowItKeeps(t *testing.T) {
	thin, _ := keeping(t, 0.28, 0.001, 0.01, "water", nil, false)
	assert.Nil(t, thin)
	syrup, _ := keeping(t, 0.32, 0.001, 0.01, "water", nil, false)
	require.NotNil(t, syrup)
	assert.Nil(t, syrup.Holding, "nobody says how long")
	kept, _ := keeping(t, 0.28, 0.001, 0.01, "water", &drink.Keeps{Days: 3}, false)
	require.NotNil(t, kept)
	assert.Equal(t, 3.0, kept.Holding.Keeps.Days)
	thick, _ := keeping(t, 0.60, 0, 0.01, "water", nil, false)
	assert.InDelta(t, 0.90, thick.WaterActivity.Mean, 0.015)
	assert.Equal(t, "°C", thick.Freezing.Unit)
	// Two grams of sugar in a hundred: 0.0596 mol/kg lower the freezing point by 1.858 K each.
	dilute, _ := keeping(t, 0.02, 0, 0.01, "water", &drink.Keeps{}, false)
	assert.InDelta(t, -1.858*0.0596, dilute.Freezing.Mean, 0.005)
}

// FDA Food Code 2022, 1-201.10, table B (food that is not heated in its closed package): from
// water activity 0.92 on only a pH below 4.2 needs no assessment, below 0.88 none does. The
// worst of the interval counts, a pH that nobody read as the worst of all, and milk is never
// lifted.
func TestHoldingIsByTheFoodCode(t *testing.T) {
	keeps := &drink.Keeps{Days: 5}
	read, c := keeping(t, 0.10, 0.01, 0.01, "water", keeps, true)
	assert.Equal(t, c.PHMeter.High, read.Holding.PH)
	assert.Equal(t, read.WaterActivity.High, read.Holding.WaterActivity)
	assert.False(t, read.Holding.NeedsAssessment)
	assert.Contains(t, read.Holding.Source, "table B")
	unread, _ := keeping(t, 0.10, 0.01, 0.01, "water", keeps, false)
	assert.True(t, math.IsNaN(unread.Holding.PH))
	assert.True(t, unread.Holding.NeedsAssessment)

	strong, _ := keeping(t, 0.68, 0.01, 0.001, "water", keeps, false)
	require.Less(t, strong.Holding.WaterActivity, 0.88)
	assert.False(t, strong.Holding.NeedsAssessment, "whatever its pH")
	assert.False(t, strong.Holding.Animal)
	milk, _ := keeping(t, 0.68, 0.01, 0.001, "milk", keeps, false)
	assert.True(t, milk.Holding.Animal)
	assert.True(t, milk.Holding.NeedsAssessment)

	// 1.35 mg of citric acid in 100 g: its pH lies about 4.2, and the upper end of it above.
	weak, c := keeping(t, 0.10, 0.0000135, 0.01, "water", keeps, true)
	require.Less(t, c.PHMeter.Mean, 4.2)
	require.Greater(t, c.PHMeter.High, 4.2)
	assert.True(t, weak.Holding.NeedsAssessment)
}

// Without water nothing is said of how it keeps, with the reason.
func TestNoWaterNoActivity(t *testing.T) {
	pot, lab := assaytest.Pot(draws, assaytest.Poured{Code: "sugar", Grams: 100, Holds: map[constituent.ID]float64{"SUCS": 1}})
	k := chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 25, House: true, Keeps: &drink.Keeps{Days: 1}}).Keeping
	assert.Contains(t, k.WaterActivity.Why, "too little water")
	assert.Contains(t, k.Freezing.Why, "too little water")
	assert.True(t, math.IsNaN(k.Freezing.Mean))
	assert.Nil(t, k.Holding)
}
