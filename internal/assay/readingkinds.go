package assay

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// readingKinds are those that take no equilibrium to foretell.
var readingKinds = []string{readMass, readBrix, readTDS, readDensity, readABV}

// expected gives what an instrument would read of a pot, draw by draw.
func (b *bench) expected(pot *ledger.Pot, kind string) []float64 {
	switch kind {
	case readMass:
		return pot.Mass()
	case readBrix:
		return b.gauge.brix(pot)
	case readTDS:
		return b.gauge.solids(pot)
	case readDensity:
		return b.gauge.density(pot)
	case readABV:
		return b.gauge.abv(pot)
	}
	panic("assay: no reading is called " + kind)
}

// expectedCentrally gives ln of what an instrument would read of a pot if the constants of
// nature were certain.
func (b *bench) expectedCentrally(pot *ledger.Pot, kind string) []float64 {
	h := (&bench{gauge: b.gauge.certain()}).expected(pot, kind)
	estimate.Logs(h)
	return h
}

// reading is one reading of a pot: in logarithms, but for those of acidity, which are
// linear (a pH is a logarithm already, and a titratable acidity may be none).
type reading struct {
	kind  string
	path  string    // of the step that read
	z     float64   // as read, in the unit of h
	read  float64   // as read, in its own unit
	h     []float64 // what the recipe gives
	noisy []float64 // z + ε; ε is 0 in column 0
	r     float64   // standard deviation of ε where the recipe expects it
	own   float64   // standard deviation of ε where it was read
	model []float64 // part of h: what the model is off by; nil if it is not
	open  bool      // the recipe hardly tells it, so it cannot disagree

	of     []string // the component that was read; none: the drink
	unit   string   // as read
	scale  float64  // from the unit as read to that of h, where there are no logarithms
	nature float64  // share of the constants of nature in the variance of h
	spread float64  // standard deviation of its distance from the recipe
	water  bool     // water that went or came may be its cause
	told   float64  // how well it tells water, in its standard deviations
}

func (r reading) linear() bool { return r.kind == readPH || r.kind == readTA }

// read reads the file's readings of one state of a pot; faults are reported, and then
// there is none to use.
func (b *bench) read(pot *ledger.Pot, read []*drink.Measured) (list []reading) {
	before := b.faults.Len()
	var expected *acidityOf
	for _, m := range read {
		if m.Mass != nil {
			if m.Mass.Measure.Kind != unit.Mass {
				b.faults.Add(m.At(), "write it in g", "a mass is read in %s", quote(m.Mass.Measure.Name))
				continue
			}
			col := b.hand.draw(*m.Mass, m.StepPath()+"/"+readMass)
			list = b.with(list, pot, m, readMass, col, func(float64) float64 { return b.hand.spread(*m.Mass) })
		}
		for _, given := range []struct {
			kind string
			q    *drink.Quantity
		}{{readBrix, m.Brix}, {readTDS, m.TDS}, {readDensity, m.Density}, {readABV, m.ABV}} {
			if given.q == nil {
				continue
			}
			col := b.hand.drawQuantity(withInstrument(*given.q, given.kind, given.q.Number), 1, m.StepPath()+"/"+given.kind)
			list = b.with(list, pot, m, given.kind, col, instrumentAt(*given.q, given.kind))
		}
		if m.PH == nil && m.TA == nil {
			continue
		}
		if expected == nil {
			if expected = b.foretell(pot, m); expected == nil {
				continue
			}
		}
		list = b.withAcidity(list, pot, m, *expected)
	}
	if b.faults.Len() > before {
		return nil
	}
	slices.SortStableFunc(list, func(a, b reading) int { return cmp.Or(cmp.Compare(a.kind, b.kind), cmp.Compare(a.z, b.z)) })
	return list // in whatever order it was read
}

// withInstrument gives a reading without ± the range that the instrument has where it
// shows at, at least half of the last digit written.
func withInstrument(q drink.Quantity, kind string, at float64) drink.Quantity {
	if q.Half == 0 {
		q.Half = max(mustInstrument(kind).halfAt(at), math.Pow10(-q.Decimals)/2)
	}
	return q
}

// instrumentAt gives the standard deviation of a reading where the instrument shows at.
func instrumentAt(q drink.Quantity, kind string) func(at float64) float64 {
	return func(at float64) float64 {
		q := withInstrument(q, kind, at)
		return halfSD(&q)
	}
}

// with adds a reading in logarithms. sd is its standard deviation: where the recipe expects
// it, so that it counts the same whatever was read.
func (b *bench) with(list []reading, pot *ledger.Pot, m *drink.Measured, kind string, read []float64, sd func(at float64) float64) []reading {
	h := b.expected(pot, kind)
	z := read[0]
	if z <= 0 || !estimate.Positive(h) {
		b.faults.Add(m.At(), "check the reading and the recipe", "%s was read, but the reading is zero or the recipe gives none of it", kind)
		return list
	}
	b.lab.ens.Journal.Write(estimate.Readings, kind+" of "+m.Pot(), read)
	expected := h[0]
	estimate.Logs(h)
	nature := 0.0
	if all := estimate.Variance(h); all > 0 {
		nature = min(max(1-estimate.Variance(b.expectedCentrally(pot, kind))/all, 0), 1)
	}
	noisy := make([]float64, len(read))
	for d := range read {
		noisy[d] = math.Log(z) + read[d]/z - 1 // ε is as wide in logarithms, however coarse the instrument
	}
	return append(list, reading{
		kind: kind, path: m.StepPath(), of: m.Of(), unit: mustInstrument(kind).unit,
		z: z, read: z, h: h, noisy: noisy, r: sd(expected) / expected, own: sd(z) / z, nature: nature,
	})
}

// acidityOf is what the recipe says of a pot's acidity, draw by draw; open if it hardly
// does.
type acidityOf struct {
	pH, per100g []float64
	open        bool
}

// foretell settles the pot, for a reading to move what its tables leave out, and gives
// the acidity that the recipe expects; nil, with a fault, if there is none.
func (b *bench) foretell(pot *ledger.Pot, m *drink.Measured) *acidityOf {
	open := b.lab.ionsOf(pot, 1).open()
	b.lab.settle(pot)
	pH, per100g, err := b.lab.acidity(pot)
	if err != nil {
		b.faults.Add(m.At(), "check the recipe", "its acidity was read, but the recipe has none: %s", err.Error())
		return nil
	}
	return &acidityOf{pH, per100g, open}
}

// withAcidity adds the readings of pH and of titratable acidity, the latter brought to
// g/100 g.
func (b *bench) withAcidity(list []reading, pot *ledger.Pot, m *drink.Measured, expected acidityOf) []reading {
	add := func(q drink.Quantity, kind string, h, model []float64, in func(d int) float64) {
		read := b.hand.drawQuantity(withInstrument(q, kind, q.Number), 1, m.StepPath()+"/"+kind)
		b.lab.ens.Journal.Write(estimate.Readings, kind+" of "+m.Pot(), read)
		for d := range read {
			read[d] *= in(d)
		}
		h = slices.Clone(h)
		for d, off := range model {
			h[d] += off
		}
		list = append(list, reading{
			kind: kind, path: m.StepPath(), of: m.Of(), unit: cmp.Or(q.Unit, mustInstrument(kind).unit), scale: in(0),
			z: read[0], read: q.Number, h: h, noisy: read, r: instrumentAt(q, kind)(max(h[0]/in(0), 0)) * in(0), own: instrumentAt(q, kind)(q.Number) * in(0),
			model: model, open: expected.open,
		})
	}
	if m.PH != nil {
		add(*m.PH, readPH, expected.pH, modelError(b.lab.ens, strings.Join(m.Of(), "/")), func(int) float64 { return 1 })
	}
	if m.TA != nil {
		density := b.gauge.density(pot)
		add(*m.TA, readTA, expected.per100g, nil, map[string]func(int) float64{
			"%":        func(int) float64 { return 1 },
			"g/100 g":  func(int) float64 { return 1 },
			"g/100 ml": func(d int) float64 { return 1 / density[d] },
			"g/l":      func(d int) float64 { return 100 / (perLitre * density[d]) },
		}[m.TA.Unit])
	}
	return list
}

// taken is what has been read of a pot as it stands, by kind. A titration tells both
// readings of acidity.
type taken map[string]bool

func takenOf(read []*drink.Measured) taken {
	t := taken{}
	for _, m := range read {
		for kind, is := range map[string]bool{
			readMass: m.Mass != nil, readBrix: m.Brix != nil, readTDS: m.TDS != nil, readDensity: m.Density != nil, readABV: m.ABV != nil,
			readPH: m.PH != nil || m.Titration != nil, readTA: m.TA != nil || m.Titration != nil,
		} {
			t[kind] = t[kind] || is
		}
	}
	return t
}

// acidity tells what was read of a pot's acidity.
func (t taken) acidity() surely { return surely{pH: t[readPH], acidity: t[readTA]} }
