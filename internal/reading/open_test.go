package reading_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

// Nobody has stated the water of a cordial of 30 g of sugar: it is no 100 °Bx for that. A refractometer
// that reads 34 tells that 66 g of it are water, whose density is that of as much sucrose, 1.1464 g/ml (CRC
// Handbook: 36 % 1.1562, 32 % 1.1366); a hydrometer tells the same. It says nothing of its sugar.
func TestAReadingTellsTheWaterThatNobodyStated(t *testing.T) {
	lib := assaytest.Core(t)
	for _, read := range []string{"brix: 34", "density: 1.1464 g/ml", "brix: 34, density: 1.1464 g/ml"} {
		a := assaytest.Assay(t, lib, fmt.Sprintf("drink: Cloudy\nserves: 1\nfoods:\n  c: {name: Cordial, group: syrup, per: 100 g, values: {SUGAR: 30 g}, source: invented}\nbuild: [100 g own:c]\nfinish: [measured: {%s}]\n", read), 300)
		for _, r := range a.Readings {
			assert.True(t, r.Agrees, "%s: %+v", read, r)
			assert.InEpsilon(t, r.Read, r.Used, 0.03, read)
		}
		require.NotNil(t, a.Chemistry)
		assert.Empty(t, a.Chemistry.TooDry, read)
		assert.InDelta(t, 34, a.Chemistry.Brix.Mean, 1, read)
		assert.InDelta(t, 1.1464, a.Chemistry.Density.Mean, 0.005, read)
		assert.InDelta(t, 66, assaytest.Figure(t, a.PerServing, constituent.Water).Mean, 1, read)
		sugars := assaytest.Figure(t, a.PerServing, constituent.Sugar)
		assert.InDelta(t, 30, sugars.Mean, 1e-6, read)
		assert.Less(t, sugars.Low, 28.0, "as far off as its pack may be")
	}
}

// More sugar is stated than such a reading leaves room for: it disagrees, and the water stays open.
func TestAReadingThatNoWaterExplains(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), "drink: Cloudy\nserves: 1\nfoods:\n  c: {name: Cordial, group: syrup, per: 100 g, values: {SUGAR: 30 g}, source: invented}\nbuild: [100 g own:c]\nfinish: [measured: {brix: 10}]\n", 100)
	require.Len(t, a.Readings, 1)
	assert.False(t, a.Readings[0].Agrees)
	assert.Contains(t, a.Chemistry.TooDry, "water of own:c")
}
