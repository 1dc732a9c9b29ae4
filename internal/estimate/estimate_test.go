package estimate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/estimate"
)

const draws = 20000

func fill(in estimate.Input, n int) []float64 {
	col := make([]float64, n+1)
	in.Fill(col)
	return col
}

func TestLognormalHasTheStatedMoments(t *testing.T) {
	col := fill(estimate.Input{Central: 4.8, Shape: estimate.Lognormal, SD: 1.2, Stream: estimate.KeyOf(1, "x")}, draws)
	mean, sd := stat.MeanStdDev(col[1:], nil)
	assert.InDelta(t, 4.8, mean, 4*1.2/math.Sqrt(draws))
	assert.InEpsilon(t, 1.2, sd, 0.03)
	assert.Equal(t, 4.8, col[0])
	for _, x := range col {
		require.Positive(t, x)
	}
}

func TestUniformIsRectangular(t *testing.T) {
	// sd of a rectangular distribution of half-width b is b/√3 (JCGM 100:2008, 4.3.7).
	col := fill(estimate.Input{Central: 10, Shape: estimate.Uniform, Low: 7, High: 13, Stream: estimate.KeyOf(1, "u")}, draws)
	s := estimate.Summarise(col)
	assert.InEpsilon(t, 3/math.Sqrt(3), s.SD, 0.02)
	assert.InDelta(t, 7.3, s.Low, 0.06)
	assert.InDelta(t, 12.7, s.High, 0.06)
}

func TestFewerDrawsAreTheFirstOfMore(t *testing.T) {
	in := estimate.Input{Central: 1, Shape: estimate.Lognormal, SD: 0.3, Stream: estimate.KeyOf(7, "value", "sr", "09160", "CITAC")}
	assert.Equal(t, fill(in, 200), fill(in, 1000)[:201])
}

func TestSharedRandomnessCorrelates(t *testing.T) {
	shared := make([]float64, draws)
	estimate.KeyOf(1, "class", "CITAC").Normals(shared)
	at := func(name string) []float64 {
		return fill(estimate.Input{Central: 1, Shape: estimate.Normal, SD: 1, Low: -9, High: 9, Stream: estimate.KeyOf(1, name), Shared: shared, Rho: 0.5}, draws)[1:]
	}
	assert.InDelta(t, 0.5, stat.Correlation(at("a"), at("b"), nil), 0.03)
}

func TestKeysOfDifferentPartsDiffer(t *testing.T) {
	assert.NotEqual(t, estimate.KeyOf(1, "ab", "c"), estimate.KeyOf(1, "a", "bc"))
	assert.NotEqual(t, estimate.KeyOf(1, "a"), estimate.KeyOf(2, "a"))
}

func TestQuantilesAgreeWithSorting(t *testing.T) {
	col := fill(estimate.Input{Central: 5, Shape: estimate.Lognormal, SD: 4, Stream: estimate.KeyOf(3, "q")}, 997)
	s := estimate.Summarise(col)
	sorted := append([]float64(nil), col[1:]...)
	stat.SortWeighted(sorted, nil)
	assert.InDelta(t, stat.Quantile(0.05, stat.LinInterp, sorted, nil), s.Low, 0.02)
	assert.InDelta(t, stat.Quantile(0.95, stat.LinInterp, sorted, nil), s.High, 0.2)
	exact := func(p float64) float64 { // definition 7, written out
		at := p * 996
		i := int(at)
		return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
	}
	assert.InDelta(t, exact(0.05), s.Low, 1e-12)
	assert.InDelta(t, exact(0.95), s.High, 1e-12)
}

func TestRangeDivisor(t *testing.T) {
	// d₂ as printed in tables of control-chart factors, after Tippett (1925)
	// Biometrika 17:364: common practice, three decimals.
	for n, want := range map[int]float64{2: 1.128, 3: 1.693, 5: 2.326, 6: 2.534, 10: 3.078, 25: 3.931} {
		assert.InDelta(t, want, estimate.RangeDivisor(n), 0.0006, "n = %d", n)
	}
	assert.True(t, math.IsNaN(estimate.RangeDivisor(1)))
}

func TestStateWords(t *testing.T) {
	for s := estimate.Measured; s <= estimate.Unknown; s++ {
		back, err := estimate.ParseState(s.String())
		require.NoError(t, err)
		assert.Equal(t, s, back)
	}
	_, err := estimate.ParseState("nil")
	assert.Error(t, err)
}
