package taste

import (
	"math"

	"sipsum/internal/acidity"
	"sipsum/internal/chemistry"
	"sipsum/internal/estimate"
)

// SourIndex is the sourness in two ways, since the field disputes what a tongue follows.
type SourIndex struct {
	Molecules  Index // acids with a protonated carboxyl group and H⁺, mmol/l
	Hydrogen   Index // of it H⁺, mmol/l
	Titratable Index // mmol of base per litre, to pH EndPoint
	EndPoint   float64
	Hardly     bool // it takes less base than a burette reads
	Notices    Difference
}

const (
	milli    = 1000
	mmol     = "mmol"
	notAsked = "its chemistry was not worked out"
)

// Sourness gives the sourness of a liquid in both ways.
func Sourness(g Glass) SourIndex { return g.sour() }

// sour reads both off the chemistry of a liquid.
func (g Glass) sour() SourIndex {
	out := SourIndex{Notices: differences()[Sour], EndPoint: acidity.EndPoints[0]}
	c := g.Chemistry
	if c == nil {
		out.Molecules, out.Hydrogen, out.Titratable = withheld(mmol, notAsked), withheld(mmol, notAsked), withheld(mmol, notAsked)
		return out
	}
	out.Hydrogen, out.Molecules = withheld(mmol, c.PHMeter.Why), withheld(mmol, c.Protonated.Why)
	if c.PHMeter.Why == "" {
		out.Hydrogen = hydrogen(c.PHMeter)
		if c.Protonated.Why == "" {
			out.Molecules = sum(estimateIndex(c.Protonated, 1), out.Hydrogen)
		}
	}
	out.Hardly = c.Acidity[0].Per100g.Why == "" && c.Acidity[0].Per100g.High < chemistry.HardlySour
	if titrated := c.Acidity[0].PerLitre; titrated.Why != "" {
		out.Titratable = withheld(mmol, titrated.Why)
	} else {
		out.Titratable = estimateIndex(titrated, milli/acidity.AsGrams(1))
	}
	return out
}

// hydrogen turns a pH into mmol of H⁺ per litre: the higher the one, the lower the other.
func hydrogen(pH chemistry.Estimate) Index {
	of := func(x float64) float64 { return milli * math.Pow(10, -x) }
	col := make([]float64, 1, len(pH.Draws)+1)
	col[0] = of(pH.Mean)
	for _, x := range pH.Draws {
		col = append(col, of(x))
	}
	x := indexOf(col, mmol)
	x.Low, x.High = min(x.Low, of(pH.High)), max(x.High, of(pH.Low))
	x.UpTo = x.High
	return x
}

// estimateIndex is an estimate of the chemistry in another unit.
func estimateIndex(e chemistry.Estimate, scale float64) Index {
	x := Index{Result: e.Result}
	x.Unit = mmol
	for _, p := range []*float64{&x.Mean, &x.SD, &x.Low, &x.High, &x.WithBounds} {
		*p *= scale
	}
	x.UpTo = max(x.High, x.Mean) // what is unknown has widened the interval
	x.Draws = make([]float64, len(e.Draws))
	for d, y := range e.Draws {
		x.Draws[d] = y * scale
	}
	return x
}

// sum adds two indices draw by draw. Where what is unknown has widened either beyond its draws,
// the ends add.
func sum(a, b Index) Index {
	col := []float64{a.Mean + b.Mean}
	for d := range min(len(a.Draws), len(b.Draws)) {
		col = append(col, a.Draws[d]+b.Draws[d])
	}
	x := indexOf(col, a.Unit)
	own := estimate.Summarise(append([]float64{a.Mean}, a.Draws...))
	if a.Low < own.Low || a.High > own.High {
		x.Low, x.High = min(x.Low, a.Low+b.Low), max(x.High, a.High+b.High)
		x.UpTo = x.High
	}
	return x
}
