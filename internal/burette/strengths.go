package burette

import (
	"math"
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/estimate"
)

// How strong an acid without a name is bends the curve as no amount does, so its pK is no
// unknown of one least squares: the prior is a mixture of narrow ones, half as wide as they are
// apart, around the pK of the sites of package acid, and each has a least squares of its own.
const strengthEnds = 2.5 // standard deviations on either side

// strengths gives the parts of the prior of the pK.
func strengths(l Liquid) []strength {
	pK := rowOf("pK of an acid without a name")
	if l.Nameless == nil {
		return []strength{{row: pK, mean: pK}}
	}
	var list []strength
	first := math.Ceil((pK.value-strengthEnds*pK.sd)/acid.SiteStep) * acid.SiteStep
	for at := first; at <= pK.value+strengthEnds*pK.sd; at += acid.SiteStep {
		list = append(list, strength{row{at, acid.SiteStep / 2}, pK})
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

// weigh finds how likely each part is, by its prior and by how well it explains the curve: its
// evidence is the mean of the posterior over the normal distribution around its centre.
func (p *Posterior) weigh(ens estimate.Ensemble, path string) {
	if len(p.parts) == 1 {
		p.parts[0].weight = 1
		return
	}
	logs := make([]float64, len(p.parts))
	_ = estimate.InBlocks(len(p.parts), func(from, to int) error {
		for i := from; i < to; i++ {
			logs[i] = p.parts[i].log + p.parts[i].evidence(numbersOf(ens, path+"/evidence", i))
		}
		return nil
	})
	for i, share := range shares(logs) {
		p.parts[i].weight = share
	}
}

// shares gives what is in proportion to exponentials, 1 together.
func shares(logs []float64) []float64 {
	most, sum := slices.Max(logs), 0.0
	out := make([]float64, len(logs))
	for i, x := range logs {
		out[i] = math.Exp(x - most)
		sum += out[i]
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}

// evidenceDraws is how many draws an evidence is the mean of: enough for a fifth of itself.
const evidenceDraws = 400

// evidence gives ln of how likely the curve is by a part, but for a constant.
func (p *part) evidence(random func() float64) float64 {
	d := newDrawer(p.model, p.w, p.centre)
	s, e := d.newScratch(), d.slice
	n := len(e.unit)
	u, at, levels := make([]float64, n), make([]float64, n), make([]float64, evidenceDraws)
	d.m.values(p.w, 0, s.x, s.slope)
	for k := range levels {
		for i := range u {
			u[i] = random()
		}
		e.turn(u, at)
		levels[k] = e.level(d, s, at)
	}
	most, sum := slices.Max(levels), 0.0
	for _, l := range levels {
		sum += math.Exp(l - most)
	}
	log := most + math.Log(sum/evidenceDraws)
	for i := range n {
		log -= math.Log(e.grip.At(i, i))
	}
	for k := range p.points {
		log -= math.Log(p.centre.half.At(k, k))
	}
	return log
}
