package curdling_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/curdling"
)

// Each published observation, as a drink of that pH at that temperature.
func TestVerdictsOfTheLiterature(t *testing.T) {
	s, err := acid.NewSolver(curdling.BenchCelsius)
	require.NoError(t, err)
	for _, o := range observed(t) {
		at := func(pH float64) *acid.Solution {
			sol := milk(t)
			_, err := s.Calibrate(sol, pH)
			require.NoError(t, err)
			return sol
		}
		m := curdling.Mixture{
			Protein: protein(t, o.protein), Celsius: o.celsius, Place: places(draws),
			Milk: same(at(o.pH), 100, draws+1), Sour: same(at(o.pH), 1, draws+1),
		}
		stand, err := m.Stand()
		require.NoError(t, err)
		assert.InDelta(t, o.pH, stand.PH[0], 0.01)
		assert.Equal(t, o.seen, string(stand.Verdict), "%s at pH %.1f and %.0f °C: %s", o.protein, o.pH, o.celsius, o.source)
	}
}

// Up to 2.5 g of citric acid monohydrate bring 1 kg of milk to pH 5.3 to 5.4, hot, and
// all of it down (queso blanco: Chandan and Kilara, eds., 2011, Dairy Ingredients for
// Food Processing, p. 299, which says 2 to 2.5 g). The tolerance of 0.15 is that milks
// buffer differently, and that a hot milk reads lower than at 25 °C.
func TestCitricAcidThatBringsMilkDown(t *testing.T) {
	gram := acid.New(0)
	gram.Acids[acid.Must("citric")] = 1000 / 210.14 // "1 kg" of the monohydrate
	at := func(grams float64) curdling.Stand {
		m := curdling.Mixture{
			Protein: protein(t, "casein"), Celsius: 82, Place: places(draws),
			Milk: same(milk(t), 1000, draws+1), Sour: same(gram, grams, draws+1),
		}
		stand, err := m.Stand()
		require.NoError(t, err)
		t.Logf("%.1f g/kg: pH %.2f, %s (%.2f)", grams, stand.PH[0], stand.Verdict, stand.Smooth)
		return stand
	}
	assert.InDelta(t, 5.35, at(2.5).PH[0], 0.15)
	assert.NotEqual(t, curdling.Smooth, at(2.5).Verdict)
	assert.NotEqual(t, curdling.Smooth, at(2).Verdict)
	assert.Equal(t, curdling.Smooth, at(0.2).Verdict, "a tenth of the dose")
}

// The bounds hold what they were read from, between and beyond.
func TestBandsOfCasein(t *testing.T) {
	casein := protein(t, "casein")
	for celsius, published := range map[float64]float64{25: 5.1, 47: 5.8} { // Bringe and Kinsella 1993
		band := casein.At(celsius)
		assert.LessOrEqual(t, band.Low, published)
		assert.GreaterOrEqual(t, band.High, published)
	}
	half := casein.At(36)
	assert.InDelta(t, (casein.At(25).High+casein.At(47).High)/2, half.High, 1e-12)
	assert.Equal(t, casein.At(80).High, casein.At(96).High)
	assert.Equal(t, casein.At(5), casein.At(-2))
	last := casein.At(0)
	for celsius := 1.0; celsius <= 100; celsius++ {
		band := casein.At(celsius)
		assert.Less(t, band.Low, band.High)
		assert.GreaterOrEqual(t, band.Low, last.Low, "a cooler pour never curdles sooner")
		assert.GreaterOrEqual(t, band.High, last.High)
		last = band
	}
}
