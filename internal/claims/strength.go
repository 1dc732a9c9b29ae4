package claims

import (
	"math"
	"slices"

	"sipsum/internal/claim"
	"sipsum/internal/constituent"
	"sipsum/internal/solution"
)

// strength is the alcohol by volume. What nobody knows of the alcohol may add to it: a ferment whose
// strength was not read is not taken to have none.
func (g *Glass) strength() (claim.Figure, error) {
	f := g.roomy(column(g.assay.Strength, percent))
	alcohol, err := g.Amount(constituent.Must(constituent.Alcohol), claim.Part{Sort: claim.Whole})
	if err != nil {
		return f, err
	}
	if len(alcohol.Gaps) > 0 && alcohol.Known[0] == 0 {
		f.Known = make([]float64, len(f.Known)) // what is below a limit is in the gaps
	}
	volume := column(g.assay.Volume, 1).Known
	for _, gap := range alcohol.Gaps {
		gap.Most = slices.Clone(gap.Most)
		for d, grams := range gap.Most {
			if ml := volume[min(d, len(volume)-1)]; ml > 0 {
				gap.Most[d] = min(percent*solution.ABV(grams, ml), 1)
			} else {
				gap.Most[d] = math.Inf(1)
			}
		}
		f.Gaps = append(f.Gaps, gap)
	}
	f.Unknown = f.Known[0] == 0 && len(f.Gaps) > 0
	return f, nil
}
