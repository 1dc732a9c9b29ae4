package estimate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/estimate"
)

func TestAnEnsembleDrawsColumnsOfItsLength(t *testing.T) {
	ens := estimate.Ensemble{Seed: 7, N: 21}
	assert.Equal(t, estimate.KeyOf(7, "value", "K"), ens.Stream("value", "K"))
	in := estimate.Input{Central: 2, Shape: estimate.Lognormal, SD: 0.5, Stream: ens.Stream("value", "K")}
	assert.Equal(t, fill(in, 20), ens.Column(in))
	same := ens.Of(3)
	assert.Len(t, same, 21)
	for _, x := range same {
		assert.Equal(t, 3.0, x)
	}
}

// A journal keeps what varies, once a name and as it was when it was written.
func TestAJournalKeepsWhatVariesOnce(t *testing.T) {
	j := &estimate.Journal{}
	col := []float64{1, 0.9, 1.1}
	j.Write(estimate.Hand, "scale", col)
	j.Write(estimate.Tables, "scale", []float64{9, 8, 7})
	j.Write(estimate.Tables, "exact", []float64{5, 4, 4})
	j.Write(estimate.Steps, "loss", []float64{0, 0.1, 0.2})
	col[1] = 100
	assert.Equal(t, []estimate.Entry{
		{Cause: estimate.Hand, Name: "scale", Column: []float64{1, 0.9, 1.1}},
		{Cause: estimate.Steps, Name: "loss", Column: []float64{0, 0.1, 0.2}},
	}, j.Entries())
	var nobody *estimate.Journal
	assert.NotPanics(t, func() { nobody.Write(estimate.Hand, "scale", col) })
}

// The first number of a column is its central value: spread is among the draws.
func TestCertainAsksTheDraws(t *testing.T) {
	assert.True(t, estimate.Certain([]float64{3, 2, 2, 2}))
	assert.False(t, estimate.Certain([]float64{2, 2, 2, 2.1}))
}

// Of draws of independent numbers the correlation has a deviation of 1/√n: three of them
// are 0.3 of a hundred draws.
func TestACovarianceCountsBeyondItsNoise(t *testing.T) {
	assert.True(t, estimate.Counts(0.31*2, 2, 100))
	assert.True(t, estimate.Counts(-0.31*2, 2, 100))
	assert.False(t, estimate.Counts(0.29*2, 2, 100))
	assert.False(t, estimate.Counts(0.31*2, 2, 25))
	assert.False(t, estimate.Counts(1, 0, 100), "what does not vary goes with nothing")
}

func TestVarianceIsThatOfTheDraws(t *testing.T) {
	assert.Equal(t, 2.5, estimate.Variance([]float64{100, 1, 2, 3, 4, 5}), "of 1 to 5, with n − 1")
	assert.Equal(t, 2.0, estimate.Variance([]float64{100, 1, 3}))
	assert.Zero(t, estimate.Variance([]float64{100, 1}), "one draw varies by nothing")
}

func TestRatiosAndLogarithms(t *testing.T) {
	assert.Equal(t, []float64{50, 0, 0, 400}, estimate.Ratio([]float64{1, 3, 3, 2}, []float64{2, 0, -1, 0.5}, 100))
	out := []float64{9, 9}
	estimate.Divide(out, []float64{6, 6}, []float64{3, 0}, 1)
	assert.Equal(t, []float64{2, 0}, out)
	col := []float64{1, math.E, math.E * math.E}
	estimate.Logs(col)
	assert.InDeltaSlice(t, []float64{0, 1, 2}, col, 1e-15)
}
