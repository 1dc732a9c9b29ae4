package burette

import (
	"math"

	"sipsum/internal/estimate"
)

// NewKit is a kit as the rows of data/burette.csv have it: the meter's noise and slope, and the
// carbonate of a base. Its Zero and Factor are the caller's, who knows which instruments read.
func NewKit(ens estimate.Ensemble, path string, base bool) Kit {
	slope := rowOf("slope of a meter")
	k := Kit{
		Noise: rowOf("noise of a meter").value,
		Slope: ens.Column(estimate.Input{Central: slope.value, Shape: estimate.Normal, SD: slope.sd, Low: math.Inf(-1), High: math.Inf(1), Stream: ens.Stream("burette", path, "slope")}),
	}
	if base {
		half := rowOf("carbonate").value
		k.Carbonate = ens.Column(estimate.Input{Central: half, Shape: estimate.Uniform, High: 2 * half, Stream: ens.Stream("burette", path, "carbonate")})
	}
	return k
}

// AminesPerGram draws the groups of free amino acids that come with a gram of a food's protein,
// mol.
func AminesPerGram(ens estimate.Ensemble, food string) []float64 {
	r := rowOf("amines of protein")
	return ens.Column(estimate.Input{Central: r.value, Shape: estimate.Lognormal, SD: r.value * math.Sqrt(math.Expm1(r.sd*r.sd)), Stream: ens.Stream("burette", food, "amines")})
}

// Rejected reports whether no meter in use is off by so much at pH 7.
func Rejected(zero float64) bool { return math.Abs(zero) > rowOf("farthest zero of a meter").value }
