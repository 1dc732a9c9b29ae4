package burette

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// How strong an acid without a name is bends the curve as no amount does, so its pK is no
// unknown of one least squares: the prior is a mixture of narrow ones around these pK, and each
// has a least squares of its own. Their spacing is that of the sites of package acid.
const (
	strengthStep = 0.5 // of the prior's standard deviation
	strengthEnds = 2.5 // standard deviations on either side
)

// strengths gives the parts of the prior of the pK: normal ones, half as wide as they are apart,
// joined so that they are as wide as the row of data/burette.csv.
func strengths(l Liquid) []strength {
	pK := rowOf("pK of an acid without a name")
	if l.Nameless == nil {
		return []strength{{row: pK, mean: pK}}
	}
	var list []strength
	for off := -strengthEnds; off <= strengthEnds; off += strengthStep {
		list = append(list, strength{row{pK.value + off*pK.sd, strengthStep * pK.sd / 2}, pK})
	}
	return list
}

// strength is a narrow prior of a pK and the whole that it is part of.
type strength struct {
	row
	mean row
}

// log is the logarithm of its part of the whole.
func (s strength) log() float64 {
	z := (s.value - s.mean.value) / s.mean.sd
	return -z * z / 2
}

// weigh finds how likely each part is, by its prior and by how well it explains the curve
// (Laplace's approximation of its evidence).
func (p *Posterior) weigh() {
	most := math.Inf(-1)
	logs := make([]float64, len(p.parts))
	for i, part := range p.parts {
		points, prior := part.misfit()
		logs[i] = part.log - (points+prior+part.volume())/2
		most = max(most, logs[i])
	}
	sum := 0.0
	for i, part := range p.parts {
		part.weight = math.Exp(logs[i] - most)
		sum += part.weight
	}
	for _, part := range p.parts {
		part.weight /= sum
	}
}

// volume is ln of the determinants of what the points leave open, of w and of the points.
func (p *part) volume() float64 {
	x, slope := make([]float64, len(p.all)), make([]float64, len(p.open))
	p.values(p.w, 0, x, slope)
	normal := mat.NewSymDense(len(p.w), nil)
	for i := range p.w {
		normal.SetSym(i, i, 1)
	}
	for _, row := range p.centre.inPrior(p.model, slope) {
		normal.SymRankOne(normal, 1, mat.NewVecDense(len(row), row))
	}
	var open mat.Cholesky
	open.Factorize(normal)
	points := 0.0
	for k := range p.points {
		points += 2 * math.Log(p.centre.half.At(k, k))
	}
	return open.LogDet() + points
}
