package sheet

import (
	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/label"
)

// factsOf turns an assay into what cards and cautions are made of.
func factsOf(a *assay.Assay) label.Facts {
	f := label.Facts{ServingG: a.Mass.Mean, ServingMl: a.Volume.Mean, Serving: map[constituent.ID]estimate.Amount{}}
	for _, c := range constituent.All() {
		if c.PerGram == 0 || c.Kind == constituent.Figure {
			continue
		}
		x := estimate.Amount{}
		x.Mean, x.WithBounds, x.Known = a.AmountOf(c.ID)
		if r, ok := a.PerServing.Find(c.ID); ok && !r.Unknown {
			x.High, x.UpTo = r.High, r.UpTo
		}
		f.Serving[c.ID] = x
	}
	return f
}
