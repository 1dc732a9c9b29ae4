package estimate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/estimate"
)

// A heavy tail leaves the 5 and 95 % limits of the logarithm where they are, draws the
// quartiles in and the ends out, by h(z) = z·(1 + t·z²)/(1 + t·1.6449²) (Fleishman 1978):
// with t = 0.3 the quartile is at 0.6745·1.1365/1.8117 = 0.4231 standard deviations, and
// z = 2.3263 (1 %) at 2.3263·2.2/1.8117 = 2.8249, since beyond two it goes on straight.
func TestAHeavyTailKeepsTheInterval(t *testing.T) {
	const n, sd, tail = 200_000, 0.3, 0.3
	in := estimate.Input{Central: 5, Shape: estimate.Lognormal, SD: 5 * sd, Stream: estimate.KeyOf(1, "tail")}
	light := fill(in, n)
	in.Tail = tail
	heavy := fill(in, n)
	sigma := math.Sqrt(math.Log1p(sd * sd))
	logs := func(col []float64) []float64 {
		x := append([]float64{}, col[1:]...)
		estimate.Logs(x)
		median := estimate.Smallest(x, len(x)/2)
		for i := range x {
			x[i] = (x[i] - median) / sigma
		}
		return x
	}
	at := func(x []float64, share float64) float64 { return estimate.Smallest(x, int(share*float64(len(x)))) }
	for _, c := range []struct{ share, light, heavy float64 }{
		{0.75, 0.6745, 0.4231}, {0.95, 1.6449, 1.6449}, {0.05, -1.6449, -1.6449}, {0.99, 2.3263, 2.8249},
	} {
		assert.InDelta(t, c.light, at(logs(light), c.share), 0.02, "%g", c.share)
		assert.InDelta(t, c.heavy, at(logs(heavy), c.share), 0.03, "%g", c.share)
	}
	assert.InEpsilon(t, 5, stat.Mean(heavy[1:], nil), 0.01, "the mean stays")
	for _, x := range heavy {
		assert.Positive(t, x)
	}
	assert.Equal(t, heavy, fill(in, n), "the same seed gives the same draws")
}
