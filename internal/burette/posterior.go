package burette

import (
	"cmp"
	"math"
	"slices"

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

	parts []*part
}

// part is the posterior with the acid without a name around one pK.
type part struct {
	*model
	w      []float64
	centre *linear
	log    float64 // of the prior of its pK, but for a constant
	weight float64 // of the part in the whole, 1 together
}

// Ask conditions a liquid on a curve. path names the streams of the draws; celsius is at what
// temperature it was titrated.
func Ask(ens estimate.Ensemble, path string, celsius float64, l Liquid, k Kit, points []Point) (*Posterior, error) {
	points = counted(points)
	if len(points) < int(rowOf("fewest points").value) {
		return nil, errFew
	}
	p, err := centreOf(ens, path, celsius, l, k, points)
	if err != nil {
		return nil, err
	}
	if p.chance() < rowOf("misfit").value {
		if other, err := centreOf(ens, path, celsius, l, k.unadjusted(ens, path), points); err == nil && other.explains(p) {
			p = other
			p.Adjusted = false
		}
	}
	if err := p.loosen(ens, path); err != nil {
		return nil, err
	}
	p.draw(ens, path)
	return p, nil
}

// centreOf finds the most likely amounts, and what else is likely.
func centreOf(ens estimate.Ensemble, path string, celsius float64, l Liquid, k Kit, points []Point) (*Posterior, error) {
	p := &Posterior{Scatter: 1, Adjusted: true}
	for _, pK := range strengths(l) {
		m, err := newModel(ens, path, celsius, l, k, points, pK.row)
		if err != nil {
			return nil, err
		}
		p.parts = append(p.parts, &part{model: m, log: pK.log()})
	}
	return p, p.fit(ens, path)
}

// fit finds the centres of the parts, and their weights.
func (p *Posterior) fit(ens estimate.Ensemble, path string) error {
	err := estimate.InBlocks(len(p.parts), func(from, to int) error {
		for i := from; i < to; i++ {
			part := p.parts[i]
			near := part.w
			if near == nil {
				near = part.prior(0)
			}
			var err error
			if part.w, part.centre, err = part.model.fit(near, p.Scatter); err != nil {
				return err
			}
		}
		return nil
	})
	if err == nil {
		p.weigh(ens, path)
	}
	return err
}

// best is the part that is likeliest.
func (p *Posterior) best() *part {
	return slices.MaxFunc(p.parts, func(a, b *part) int { return cmp.Compare(a.weight, b.weight) })
}

// misfit is how far the points and the prior together are from the centre.
func (p *part) misfit() (points, prior float64) {
	return p.centre.misfit(p.centre.r), distance(p.w, p.prior(0))
}

// chance is how often points scatter as much as these by their spreads alone. What the prior
// gives way counts too: it is the distance of the whole from what recipe and kit expect.
func (p *Posterior) chance() float64 {
	points, prior := p.best().misfit()
	return 1 - distuv.ChiSquared{K: float64(len(p.parts[0].points))}.CDF(points+prior)
}

// Contradicts reports whether recipe and kit would have to give way further to meet the curve than
// chance takes them: then the curve says something that neither knows, and its acids are not those
// of the liquid.
func (p *Posterior) Contradicts() bool {
	best := p.best()
	_, prior := best.misfit()
	return prior > distuv.ChiSquared{K: float64(len(best.open))}.Quantile(1-rowOf("misfit").value)
}

// explains reports whether a wider meter takes away more than its zero and its slope do by chance,
// counted in what is left of the points' scatter.
func (p *Posterior) explains(other *Posterior) bool {
	sum := func(q *Posterior) float64 {
		points, prior := q.best().misfit()
		return points + prior
	}
	const freed = 2
	left := sum(p)
	scatter := max(left/float64(len(p.parts[0].points)), 1)
	return (sum(other)-left)/scatter > distuv.ChiSquared{K: freed}.Quantile(1-rowOf("misfit").value)
}

// loosen lets points that scatter more than their spreads allow count as so much coarser. How far
// the recipe is from what fits them is another matter.
func (p *Posterior) loosen(ens estimate.Ensemble, path string) error {
	freedom := float64(len(p.parts[0].points))
	most := distuv.ChiSquared{K: freedom}.Quantile(1 - rowOf("misfit").value)
	const rounds = 3
	for range rounds {
		misfit, _ := p.best().misfit()
		if misfit <= most {
			break
		}
		p.Scatter *= math.Sqrt(misfit / freedom)
		if err := p.fit(ens, path); err != nil {
			return err
		}
	}
	return nil
}

func (p *Posterior) draw(ens estimate.Ensemble, path string) {
	all := p.columns(ens, path)
	at := p.parts[0].at
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
