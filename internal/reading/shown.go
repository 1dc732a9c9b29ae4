package reading

import (
	"math"

	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/meter"
	"sipsum/internal/note"
)

// shown is what an instrument showed, less what it is off by where the shelf of meters tells that.
type shown struct {
	kind   string
	read   float64   // as it was read
	column []float64 // draw by draw; at central values less what the instrument is off by
	alone  []float64 // the same without the instrument: what one reading scatters by
	sd     func(at float64) float64
	by     *taker // nil: nobody says which instrument it was
}

// taker is the instrument of a reading, and what the reading scatters by.
type taker struct {
	*meter.Reader
	noise float64
}

// shown draws a reading.
func (b *Bench) shown(m *drink.Measured, q drink.Quantity, kind string) shown {
	at := m.StepPath() + "/" + kind
	by := b.Meters.Of(m, kind)
	if by == nil {
		col := b.Hand.DrawQuantity(withInstrument(q, kind, q.Number), 1, at)
		return shown{kind, q.Number, col, col, instrumentAt(q, kind), nil}
	}
	// no meter is sharper than its display: a uniform digit (JCGM 100, 4.3.7)
	least := by.Step / math.Sqrt(12)
	noise := max(amount.HalfSD(&q), least)
	if q.Half == 0 && !q.Exact {
		noise = max(by.Noise, amount.HalfSD(&drink.Quantity{Half: math.Pow10(-q.Decimals) / 2}))
	}
	alone := q
	alone.Half, alone.Sigma, alone.Exact = noise, true, false
	return lessOff(shown{kind: kind, read: q.Number, alone: b.Hand.DrawQuantity(alone, 1, at), by: &taker{by, noise}})
}

// weighed draws the mass that a scale showed.
func (b *Bench) weighed(m *drink.Measured) shown {
	const kind = amount.ReadMass
	by := b.Meters.Of(m, kind)
	if by == nil {
		col := b.Hand.Draw(*m.Mass, m.StepPath()+"/"+kind)
		return shown{kind, col[0], col, col, func(float64) float64 { return b.Hand.Spread(*m.Mass) }, nil}
	}
	q := drink.Quantity{Number: m.Mass.Base(), Half: m.Mass.Half * m.Mass.Measure.Factor, Sigma: m.Mass.Sigma, Exact: m.Mass.Exact, Unit: "g"}
	if q.Half == 0 && !q.Exact { // a step as it is written
		q.Half = max(m.Mass.Resolution()/2, by.Noise*amount.Sqrt3)
	}
	return b.shown(m, q, kind)
}

// lessOff takes off what the instrument shows too much.
func lessOff(s shown) shown {
	off, u := s.by.Off(s.read), s.by.U(s.read)
	s.column = make([]float64, len(off))
	for d := range off {
		s.column[d] = s.alone[d] - off[d]
	}
	sd := math.Hypot(s.by.noise, u)
	s.sd = func(float64) float64 { return sd }
	return s
}

// write notes a reading in the journal of the run, its instrument apart from what one reading scatters by.
func (b *Bench) write(m *drink.Measured, s shown) {
	if b.surveying {
		return // what is not yet known of its instrument is no input
	}
	b.Lab.Ens.Journal.Write(estimate.Readings, s.kind+" of "+m.Pot(), s.alone)
	if s.by != nil {
		b.Lab.Ens.Journal.Write(estimate.Readings, "what the "+s.by.Kind+" "+note.Quote(s.by.Name())+" is off by", s.by.Off(s.read))
	}
}

// withInstrument gives a reading without ± the range that the instrument has where it
// shows at, at least half of the last digit written.
func withInstrument(q drink.Quantity, kind string, at float64) drink.Quantity {
	if q.Half == 0 {
		q.Half = max(amount.MustInstrument(kind).HalfAt(at), math.Pow10(-q.Decimals)/2)
	}
	return q
}

// instrumentAt gives the standard deviation of a reading where the instrument shows at.
func instrumentAt(q drink.Quantity, kind string) func(at float64) float64 {
	return func(at float64) float64 {
		q := withInstrument(q, kind, at)
		return amount.HalfSD(&q)
	}
}

// Survey tells what the readings of a pot say of their instruments, and gives what was read by others: on that the
// pot can be conditioned before what the instruments are off by is found. several says which instruments are asked.
func (b *Bench) Survey(pot *ledger.Pot, read []*drink.Measured, several func(name string) bool) (seen []meter.Seen, others []*drink.Measured) {
	var asked []*drink.Measured
	for _, m := range read {
		by, without := *m, *m
		for _, kind := range m.Kinds() {
			if x := b.Meters.Of(m, kind); x != nil && several(x.Name()) && kind != meter.Titration {
				clearReading(&without, kind)
			} else {
				clearReading(&by, kind)
			}
		}
		if len(by.Kinds()) > 0 {
			asked = append(asked, &by)
		}
		if len(without.Kinds()) > 0 {
			others = append(others, &without)
		}
	}
	if len(asked) == 0 {
		return nil, read
	}
	alone := NewBench(b.Lab, b.Hand, &fail.List{})
	alone.Meters, alone.surveying = b.Meters, true
	for _, r := range alone.read(pot.Copy(), asked) {
		if r.open || r.by == nil {
			continue
		}
		s := meter.Seen{By: r.by.Reader, Shown: r.read, Scale: 1, Noise: r.by.noise, H: r.h, V: make([]float64, len(r.h))}
		if !r.linear() {
			s.Scale, s.Noise = 1/r.z, r.by.noise/r.z
		}
		for d := range s.V {
			s.V[d] = r.noisy[d] - r.h[d]
		}
		seen = append(seen, s)
	}
	return seen, others
}
