package burette

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"sipsum/internal/estimate"
)

// Posterior is what a curve and the recipe tell together: columns of the ensemble, the central
// value first.
type Posterior struct {
	Acids    [][]float64 // mol, by place of Liquid.Acids
	Nameless []float64   // mol of protons; nil: none was asked for
	Strong   []float64   // mol of charge
	Zero     []float64   // of the meter
	Slope    []float64
	Factor   []float64 // sample and base
	Scatter  float64   // of the points over what their spreads allow; at least 1
	Adjusted bool      // the meter is as an adjusted one is

	m      *model
	w      []float64
	centre *linear
}

// Ask conditions a liquid on a curve. path names the streams of the draws; celsius is at what
// temperature it was titrated.
func Ask(ens estimate.Ensemble, path string, celsius float64, l Liquid, k Kit, points []Point) (*Posterior, error) {
	if len(points) < int(rowOf("fewest points").value) {
		return nil, errFew
	}
	p, err := centreOf(ens, path, celsius, l, k, points)
	if err != nil {
		return nil, err
	}
	if limit := rowOf("misfit").value; p.chance() < limit {
		if other, err := centreOf(ens, path, celsius, l, k.unadjusted(ens, path), points); err == nil && other.chance() >= limit {
			p, p.Adjusted = other, false
		}
	}
	if err := p.loosen(); err != nil {
		return nil, err
	}
	p.draw(ens, path)
	return p, nil
}

// centreOf finds the most likely amounts.
func centreOf(ens estimate.Ensemble, path string, celsius float64, l Liquid, k Kit, points []Point) (*Posterior, error) {
	m, err := newModel(ens, path, celsius, l, k, points)
	if err != nil {
		return nil, err
	}
	p := &Posterior{m: m, Scatter: 1, Adjusted: true}
	p.w, p.centre, err = m.fit(1)
	return p, err
}

// chance is how often points scatter as much as these by their spreads alone. What the prior
// gives way counts too: it is the distance of the whole from what recipe and kit expect.
func (p *Posterior) chance() float64 {
	all := p.centre.misfit(p.centre.r) + distance(p.w, p.m.prior(0))
	return 1 - distuv.ChiSquared{K: float64(len(p.m.points))}.CDF(all)
}

// loosen lets points that scatter more than their spreads allow count as so much coarser. How far
// the recipe is from what fits them is another matter.
func (p *Posterior) loosen() error {
	freedom := float64(len(p.m.points))
	most := distuv.ChiSquared{K: freedom}.Quantile(1 - rowOf("misfit").value)
	const rounds = 3
	for range rounds {
		misfit := p.centre.misfit(p.centre.r)
		if misfit <= most {
			break
		}
		times := math.Sqrt(misfit / freedom)
		p.Scatter *= times
		var err error
		if p.w, p.centre, err = p.m.fit(p.Scatter); err != nil {
			return err
		}
	}
	return nil
}

func (p *Posterior) draw(ens estimate.Ensemble, path string) {
	all := newDrawer(p.m, p.w, p.centre).all(ens, path)
	at := p.m.at
	for _, i := range at.acids {
		p.Acids = append(p.Acids, all[i])
	}
	if at.nameless >= 0 {
		p.Nameless = all[at.nameless]
	}
	p.Strong, p.Zero, p.Slope, p.Factor = all[at.strong], all[at.zero], all[at.slope], all[at.factor]
}

// unadjusted is the kit with a meter that nobody has adjusted.
func (k Kit) unadjusted(ens estimate.Ensemble, path string) Kit {
	wide := func(what string, central float64) []float64 {
		return ens.Column(estimate.Input{Central: central, Shape: estimate.Normal, SD: rowOf(what).sd, Low: math.Inf(-1), High: math.Inf(1), Stream: ens.Stream("burette", path, what)})
	}
	k.Zero = wide("zero of a meter that nobody adjusted", 0)
	k.Slope = wide("slope of a meter that nobody adjusted", rowOf("slope of a meter that nobody adjusted").value)
	return k
}
