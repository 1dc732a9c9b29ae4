package claims

import (
	"math"
	"slices"

	"sipsum/internal/acidity"
	"sipsum/internal/chemistry"
	"sipsum/internal/claim"
	"sipsum/internal/composition"
	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

// percent is what a per cent is of one.
const percent = 1.0 / unit.Hundred

// column is a result that is wholly known.
func column(r composition.Result, factor float64) claim.Figure {
	f := claim.Figure{Known: make([]float64, 1+len(r.Draws))}
	f.Known[0] = r.Mean * factor
	for d, x := range r.Draws {
		f.Known[d+1] = x * factor
	}
	return f
}

// readable are the properties that a reading settles: its line, by the key of measured.
var readable = map[claim.Property]struct{ words, line string }{
	claim.PH:       {"the pH of the drink", "- measured: {ph: …}"},
	claim.Acidity:  {"the titratable acidity of the drink", "- measured: {ta: … g/l}"},
	claim.Brix:     {"the °Brix of the drink", "- measured: {brix: …}"},
	claim.BrixAcid: {"the titratable acidity of the drink", "- measured: {ta: … g/l}"},
}

// solution gives a figure of the chemistry. What it is open to beyond its draws is a gap, and so is
// all that it could be where it is withheld.
func (g *Glass) solution(p claim.Property) (claim.Figure, error) {
	c := g.assay.Chemistry
	ph := unit.LimitOf("pH", "")
	nothing := claim.Figure{Known: []float64{0}, Unknown: true}
	switch {
	case c == nil:
		return g.open(p, nothing, math.Inf(1), ""), nil
	case p == claim.PH:
		return g.estimate(p, c.PH, 1, ph.Low, ph.High), nil
	case p == claim.Acidity && len(c.Acidity) > 0:
		return g.estimate(p, c.Acidity[0].PerLitre, 1/float64(acidity.PerLitre), 0, math.Inf(1)), nil
	case p == claim.BrixAcid:
		return g.estimate(p, c.BrixAcid, 1, 0, math.Inf(1)), nil
	case p == claim.Brix && c.TooDry == "":
		return column(c.Brix, 1), nil
	case p == claim.Brix:
		return g.open(p, nothing, unit.LimitOf("°Brix", "").High, c.TooDry), nil
	}
	return g.open(p, nothing, math.Inf(1), ""), nil
}

// estimate makes a figure of an estimate; without draws it lies between two ends.
func (g *Glass) estimate(p claim.Property, e chemistry.Estimate, factor, low, high float64) claim.Figure {
	if e.Why != "" || len(e.Draws) == 0 && math.IsNaN(e.Mean) {
		if !math.IsNaN(e.Low) && !math.IsNaN(e.High) && e.High > e.Low {
			low, high = e.Low*factor, e.High*factor
		}
		return g.open(p, claim.Figure{Known: []float64{low}, Unknown: true}, high-low, e.Why)
	}
	col := slices.Concat([]float64{e.Mean}, e.Draws)
	drawn := estimate.Summarise(col)
	below, above := max(drawn.Low-e.Low, 0), max(e.High-drawn.High, 0)
	for d := range col {
		col[d] = (col[d] - below) * factor
	}
	f := claim.Figure{Known: col}
	if below+above > unit.Closeness*math.Abs(e.Mean) {
		return g.open(p, f, (below+above)*factor, "")
	}
	return f
}

// open adds what a property may be more than it is known to be.
func (g *Glass) open(p claim.Property, f claim.Figure, most float64, why string) claim.Figure {
	r := readable[p]
	gap := claim.Gap{Key: string(p), Most: []float64{most}, What: r.words, Settle: r.line, Where: "finish"}
	if why != "" {
		gap.What += " (withheld: " + why + ")"
	}
	f.Gaps = append(f.Gaps, gap)
	return f
}
