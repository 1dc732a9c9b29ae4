package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/estimate"
)

// Inputs of another kind stay at their central values, whatever their shape; those of the kind are
// drawn as ever.
func TestOnlyOneKindVaries(t *testing.T) {
	all := estimate.Ensemble{Seed: 5, N: 40}
	only := all
	only.Only = "amount"
	for _, in := range []estimate.Input{
		{Central: 3, Shape: estimate.Lognormal, SD: 1},
		{Central: 1, Shape: estimate.Uniform, Low: 0, High: 4},
		{Central: 2, Shape: estimate.Normal, SD: 1, High: 9},
		{Central: 3, Shape: estimate.Lognormal, SD: 1, Shared: make([]float64, 39), Rho: 0.5},
	} {
		other, same := in, in
		other.Stream, same.Stream = only.Stream("value", "x"), only.Stream("amount", "x")
		assert.Equal(t, all.Of(in.Central), only.Column(other))
		in.Stream = all.Stream("amount", "x")
		assert.Equal(t, all.Column(in), only.Column(same))
		assert.False(t, estimate.Certain(all.Column(in)))
	}
	z := []float64{1, 2}
	only.Stream("class", "x").Normals(z)
	assert.Equal(t, []float64{0, 0}, z)
}
