package titration

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/burette"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/meter"
	"sipsum/internal/note"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
)

// Rig takes bench titrations of pots.
type Rig struct {
	Lab    *acidity.Laboratory
	Hand   amount.Hand
	Meters *meter.Run // the instruments of the shelf; nil: there are none
	Faults *fail.List

	Notes []note.Note // of what was titrated so far
	Told  []Told      // what curves told of it

	Doubted bool // a curve and its recipe disagree, or it was read by a meter that is off: its pH lifts nothing

	side []float64 // which is right of the pot, where that was asked
}

// sides draws which is right of the pot, its recipe or its reading: once, however often it is asked.
func (r *Rig) sides(m *drink.Measured) []float64 {
	if r.side == nil {
		r.side = r.Hand.Sides(m)
	}
	return r.side
}

func (r *Rig) note(n note.Note) { r.Notes = append(r.Notes, n) }

// sampled is what was titrated of a liquid, as package acid reads it: in rising pH, acid
// counting as base below zero.
type sampled struct {
	curve    acid.Titration
	points   []burette.Point // the same, with how the volumes were read
	grams    float64         // of the liquid in the curve
	strength []float64       // by draw: what the sample and the titrant are off by
	perMl    float64         // mol of base in a ml of the first titrant; negative of an acid
}

// sampledOf writes a pot's titrations as one, for the sample of the first. solvent is grams
// of it in a gram of the liquid.
func (r *Rig) sampledOf(pot *ledger.Pot, read []*drink.Measured, in acidity.Ions, solvent float64) sampled {
	b := sampled{strength: make([]float64, pot.N)}
	own := acid.New(0)
	in.Fill(own, 0)
	const divalent = 2 // ½·2²
	b.curve.Celsius = acidity.MeterCelsius
	b.curve.Background = (own.Background + divalent*(own.Metals[acid.Calcium]+own.Metals[acid.Magnesium])) / own.Solvent

	perMl, first := mlOfWater(), 0.0
	for i, m := range read {
		sample, titrant := r.sampleOf(pot, m), r.titrantOf(m)
		if i == 0 {
			first, b.perMl = sample[0], titrant[0]/acidity.PerLitre
		}
		for d := range b.strength {
			b.strength[d] += titrant[d] / titrant[0] * sample[0] / sample[d] / float64(len(read))
		}
		for k, p := range m.Titration {
			if k == 0 && i > 0 {
				continue // the liquid itself, which stands there already
			}
			scale := first / sample[0]
			ml := p.Volume.Base() * scale
			point := acid.Reading{Base: ml / acidity.PerLitre * titrant[0], Solvent: ml * perMl / unit.Kilo, PH: p.PH - r.off(m, p.PH)}
			b.curve.Points = append(b.curve.Points, point)
			off := 0.0 // of no volume nothing was read
			if k > 0 {
				off = r.Hand.Spread(p.Volume) * scale / acidity.PerLitre * math.Abs(titrant[0])
			}
			b.points = append(b.points, burette.Point{Base: point.Base, Off: off, Water: point.Solvent, PH: point.PH})
		}
	}
	b.grams, b.curve.Solvent = first, first*solvent/unit.Kilo
	slices.SortStableFunc(b.points, func(x, y burette.Point) int { return cmp.Compare(x.Base, y.Base) })
	slices.SortStableFunc(b.curve.Points, func(x, y acid.Reading) int { return cmp.Compare(x.Base, y.Base) })
	return b
}

// mlOfWater gives the grams in a ml of water, which is what a titrant is but for a
// fraction of a per cent.
func mlOfWater() float64 {
	v, _ := solution.VolumeOf(constituent.Water)
	return 1 / v.MlPerGram
}

// sampleOf draws how many grams were titrated; where the file does not say, what is usual.
func (r *Rig) sampleOf(pot *ledger.Pot, m *drink.Measured) []float64 {
	if m.Sample == nil {
		usual := amount.MustInstrument(amount.ReadSample)
		r.note(note.Note{Kind: "titration", Text: fmt.Sprintf(
			"%s: the titration does not say how much was titrated, so %g %s are taken: write sample: %[2]g %[3]s if that is so, or what it was, since all that it tells hangs on it",
			note.Place(m.StepPath()), usual.Usual, usual.Unit)})
		return r.Hand.DrawQuantity(drink.Quantity{Number: usual.Usual, Half: usual.Half}, 1, m.StepPath()+"/sample")
	}
	sample := r.Hand.Draw(*m.Sample, m.StepPath()+"/sample")
	r.Lab.Ens.Journal.Write(estimate.Readings, "sample of the titration of "+m.Pot(), sample)
	if m.Sample.Measure.Kind == unit.Volume {
		for d, density := range r.Lab.Gauge.Density(pot) {
			sample[d] *= density
		}
	}
	return sample
}

// titrantOf draws the strength of the base, mol/l; negative of an acid.
func (r *Rig) titrantOf(m *drink.Measured) []float64 {
	q, sign := m.Base, 1.0
	if m.Acid != nil {
		q, sign = m.Acid, -1
	}
	strength := *q
	if strength.Half == 0 { // 0.1 mol/l is a name: its digits tell no spread
		strength.Half = amount.MustInstrument(amount.ReadStrength).HalfAt(strength.Number)
	}
	col := r.Hand.DrawQuantity(strength, 1, m.StepPath()+"/titrant")
	r.Lab.Ens.Journal.Write(estimate.Readings, "strength of the titrant of "+m.Pot(), col)
	for d := range col {
		col[d] *= sign
	}
	return col
}
