package burette

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"sipsum/internal/estimate"
)

// Told is how sharply a liquid's acids are known, by place of Liquid.Acids.
type Told struct {
	Half        []float64   // half of the 90 % interval, mol
	Correlation [][]float64 // of each with each
	Factor      float64     // half of that of what the base brings over what is counted
}

// ninety is how many standard deviations half of a normal 90 % interval is.
var ninety = distuv.UnitNormal.Quantile(estimate.HighShare)

// read90 reads the intervals off a covariance of the open quantities, on their scales.
func (o *Outlook) read90(cov *mat.Dense) Told {
	t := Told{}
	place := map[int]int{}
	for i, a := range o.m.open {
		place[a] = i
	}
	half := func(a int) float64 {
		i, open := place[a]
		if !open {
			return 0
		}
		u := o.m.all[a]
		sd := math.Sqrt(cov.At(i, i))
		// the recipe's own value is its mean, and the draws lie around their median: what is left
		// of the prior is off by that
		z := u.of(o.x[a]) - (u.z[0]-u.mean)*cov.At(i, i)/(u.sd*u.sd)
		low, _ := u.at(z - ninety*sd)
		high, _ := u.at(z + ninety*sd)
		return (high - low) / 2
	}
	for _, a := range o.m.at.acids {
		t.Half = append(t.Half, half(a))
		row := make([]float64, 0, len(o.m.at.acids))
		for _, b := range o.m.at.acids {
			row = append(row, correlationIn(cov, place, a, b))
		}
		t.Correlation = append(t.Correlation, row)
	}
	t.Factor = half(o.m.at.factor)
	return t
}

// correlationIn is of two quantities; of one that is certain none.
func correlationIn(cov *mat.Dense, place map[int]int, a, b int) float64 {
	i, first := place[a]
	j, second := place[b]
	switch {
	case a == b:
		return 1
	case !first || !second:
		return 0
	}
	return cov.At(i, j) / math.Sqrt(cov.At(i, i)*cov.At(j, j))
}

// Pair is two acids that are known by their sum, by place of Liquid.Acids.
type Pair struct {
	First, Second int
	Correlation   float64
}

// Joined gives the pairs that cannot be told apart (the row of data/burette.csv).
func (t Told) Joined() []Pair {
	var list []Pair
	for i, row := range t.Correlation {
		for j := i + 1; j < len(row); j++ {
			if row[j] <= rowOf("apart").value {
				list = append(list, Pair{i, j, row[j]})
			}
		}
	}
	return list
}

// Sum gives half of the 90 % interval of a sum, each acid times its weight.
func (t Told) Sum(acids []int, weight func(i int) float64) float64 {
	variance := 0.0
	for _, i := range acids {
		for _, j := range acids {
			variance += weight(i) * weight(j) * t.Half[i] * t.Half[j] * t.Correlation[i][j]
		}
	}
	return math.Sqrt(max(variance, 0))
}

// Narrows gives by how much of itself the interval of an acid is narrower than in another, in the
// mean of the directions in which the acids are uncertain: of determinants of their covariances,
// the root for as many acids.
func (t Told) Narrows(from Told) float64 {
	var uncertain []int
	for i := range t.Half {
		if t.Half[i] > 0 && from.Half[i] > 0 {
			uncertain = append(uncertain, i)
		}
	}
	if len(uncertain) == 0 {
		return 0
	}
	n := float64(len(uncertain))
	return 1 - math.Exp((t.logVolume(uncertain)-from.logVolume(uncertain))/n)
}

// logVolume is half of ln of the determinant of some acids' covariance, but for a constant.
func (t Told) logVolume(acids []int) float64 {
	c := mat.NewSymDense(len(acids), nil)
	sum := 0.0
	for i, a := range acids {
		sum += math.Log(t.Half[a])
		for j := range i + 1 {
			c.SetSym(i, j, t.Correlation[a][acids[j]])
		}
	}
	var ch mat.Cholesky
	if !ch.Factorize(c) {
		return sum // two that are one
	}
	return sum + ch.LogDet()/2
}
