package titration

import (
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/amount"
	"sipsum/internal/burette"
	"sipsum/internal/drink"
	"sipsum/internal/meter"
)

// meter draws what the meter says of the liquid itself: it is off by the same on all points.
func (r *Rig) meter(m *drink.Measured) []float64 {
	first := m.Titration[0].PH
	if by := r.by(m); by != nil {
		is := by.Off(first)
		for d, off := range is {
			is[d] = first - off
		}
		return is
	}
	q := drink.Quantity{Number: first, Half: amount.MustInstrument(amount.ReadPH).Half}
	return r.Hand.DrawQuantity(q, 1, m.StepPath()+"/titration")
}

// by is the meter of the shelf that took a titration; nil: nobody says which.
func (r *Rig) by(m *drink.Measured) *meter.Reader { return r.Meters.Of(m, meter.Titration) }

// off is what the meter of the shelf shows too much where it shows so much, at central values.
func (r *Rig) off(m *drink.Measured, shown float64) float64 {
	if by := r.by(m); by != nil {
		return by.Off(shown)[0]
	}
	return 0
}

// meterAsFound gives the pH of the liquid itself, draw by draw, by what the curve tells of the meter.
func meterAsFound(shown float64, p *burette.Posterior) []float64 {
	out := make([]float64, len(p.Zero))
	for d := range out {
		out[d] = burette.TrueOf(shown, p.Zero[d], p.Slope[d])
	}
	return out
}

// corrected is a curve whose meter was off, as one that is right would have shown it. What an
// adjusted one is off by is left in the curve: the liquid reads what was read.
func corrected(b sampled, p *burette.Posterior) sampled {
	b.curve.Points = slices.Clone(b.curve.Points)
	for i, x := range b.curve.Points {
		b.curve.Points[i] = acid.Reading{Base: x.Base, Solvent: x.Solvent, PH: burette.TrueOf(x.PH, p.Zero[0], p.Slope[0])}
	}
	return b
}
